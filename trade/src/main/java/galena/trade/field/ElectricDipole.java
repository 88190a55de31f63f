package galena.trade.field;

import org.hipparchus.complex.Complex;

/**
 * A short straight current in free space; over perfect ground the moment holds the image too. With p = 1/(jkr):
 * Er = (η·M·cosθ/2πr²)·(1 + p), Eθ = (jη·k·M·sinθ/4πr)·(1 + p + p²), Hφ = (jk·M·sinθ/4πr)·(1 + p). Balanis, Antenna
 * Theory, section 4.2; the common phase exp(−jkr) is left out.
 *
 * @param moment M, current times effective length (A·m), rms or peak as the fields are wanted
 * @param frequency (Hz)
 * @param overGround whether it stands on perfect ground, which its image has been counted for: it then radiates into the
 *     upper half of space only
 */
public record ElectricDipole(double moment, double frequency, boolean overGround) implements Radiator {
    public ElectricDipole {
        if (!(moment >= 0) || Double.isInfinite(moment)) {
            throw new IllegalArgumentException("a current moment is a finite magnitude, not " + moment);
        }
        FreeSpace.positive(frequency, "frequency");
    }

    @Override
    public PointField at(double distance, double angle) {
        FreeSpace.positive(distance, "distance");
        double k = FreeSpace.waveNumber(frequency);
        Complex p = new Complex(0, -1 / (k * distance));
        Complex one = Complex.ONE.add(p);
        Complex transverse = new Complex(0, k * moment * Math.sin(angle) / (4 * Math.PI * distance));
        double radial = FreeSpace.IMPEDANCE * moment * Math.cos(angle) / (2 * Math.PI * distance * distance);
        return new PointField(
                one.multiply(radial),
                one.add(p.multiply(p)).multiply(transverse).multiply(FreeSpace.IMPEDANCE),
                Complex.ZERO,
                Complex.ZERO,
                Complex.ZERO,
                one.multiply(transverse));
    }

    /** P = η·k²·M²/6π (W) of an rms moment, half of it over ground, where the lower half of space is no more. */
    @Override
    public double radiatedPower() {
        double km = FreeSpace.waveNumber(frequency) * moment;
        double whole = FreeSpace.IMPEDANCE * km * km / (6 * Math.PI);
        return overGround ? whole / 2 : whole;
    }

    @Override
    public ElectricDipole scaled(double factor) {
        return new ElectricDipole(moment * factor, frequency, overGround);
    }

    /** Over ground what is on the axis stands above the aerial: limits are read along the ground. */
    @Override
    public double worstE(double distance) {
        double broadside = broadside(distance).greatestE();
        return overGround ? broadside : Math.max(onAxis(distance).greatestE(), broadside);
    }
}
