package galena.trade.field;

import org.hipparchus.complex.Complex;

/**
 * The current of a short vertical wire over perfect ground, summed over its length and its image, each piece a dipole of
 * {@link ElectricDipole}: good beside the wire, where one dipole for the whole isn't. Distance and angle count from the
 * point on the ground under the wire. The current falls evenly from base to top; what still flows at the top charges the
 * top capacitance, taken as sitting there.
 *
 * @param wire the wire
 * @param current at its base (A), rms or peak as the fields are wanted
 * @param frequency (Hz)
 */
public record WireCurrent(ShortWire wire, double current, double frequency) implements Radiator {
    private static final int PIECES = 200;

    /** Nearer than this many pieces the sum shows its pieces. */
    private static final int NEAREST_PIECES = 3;

    public WireCurrent {
        if (!(current >= 0) || Double.isInfinite(current)) {
            throw new IllegalArgumentException("a current is a finite magnitude, not " + current);
        }
        FreeSpace.positive(frequency, "frequency");
    }

    @Override
    public PointField at(double distance, double angle) {
        FreeSpace.positive(distance, "distance");
        double across = distance * Math.sin(angle);
        double above = distance * Math.cos(angle);
        double piece = wire.height() / PIECES;
        Sum sum = new Sum(across, above, frequency);
        for (int i = 0; i < PIECES; i++) {
            double along = (i + 0.5) / PIECES;
            double here = wire.baseHeight() + along * wire.height();
            double moment = current * (1 - along * (1 - wire.currentAtTop())) * piece;
            if (Math.hypot(across, above - here) < NEAREST_PIECES * piece) {
                throw new IllegalArgumentException("a point " + distance + " m away lies on the wire itself");
            }
            sum.add(moment, here);
            sum.add(moment, -here);
        }
        double sin = Math.sin(angle), cos = Math.cos(angle);
        return new PointField(
                sum.eAcross.multiply(sin).add(sum.eUp.multiply(cos)),
                sum.eAcross.multiply(cos).subtract(sum.eUp.multiply(sin)),
                Complex.ZERO,
                Complex.ZERO,
                Complex.ZERO,
                sum.hAround);
    }

    /** Fields of upright dipoles, added up in cylindrical components with their phases. */
    private static final class Sum {
        private final double across;
        private final double above;
        private final double frequency;
        private Complex eAcross = Complex.ZERO;
        private Complex eUp = Complex.ZERO;
        private Complex hAround = Complex.ZERO;

        Sum(double across, double above, double frequency) {
            this.across = across;
            this.above = above;
            this.frequency = frequency;
        }

        void add(double moment, double height) {
            double r = Math.hypot(across, above - height);
            double angle = Math.atan2(across, above - height);
            PointField field = new ElectricDipole(moment, frequency, false).at(r, angle);
            double kr = FreeSpace.waveNumber(frequency) * r;
            Complex phase = new Complex(Math.cos(kr), -Math.sin(kr));
            double sin = Math.sin(angle), cos = Math.cos(angle);
            Complex radial = field.eRadial().multiply(phase);
            Complex polar = field.ePolar().multiply(phase);
            eAcross = eAcross.add(radial.multiply(sin)).add(polar.multiply(cos));
            eUp = eUp.add(radial.multiply(cos)).subtract(polar.multiply(sin));
            hAround = hAround.add(field.hAzimuth().multiply(phase));
        }
    }

    @Override
    public double radiatedPower() {
        return wire.asDipole(current, frequency).radiatedPower();
    }

    @Override
    public WireCurrent scaled(double factor) {
        return new WireCurrent(wire, current * factor, frequency);
    }

    /** Along the ground, where limits are read. */
    @Override
    public double worstE(double distance) {
        return broadside(distance).greatestE();
    }

    /** Along the ground. */
    @Override
    public double worstH(double distance) {
        return broadside(distance).greatestH();
    }
}
