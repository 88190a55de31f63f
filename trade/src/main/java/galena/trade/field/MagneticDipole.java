package galena.trade.field;

import org.hipparchus.complex.Complex;

/**
 * A small current loop or ferrite rod coil in free space. With p = 1/(jkr):
 * Hr = (jk·m·cosθ/2πr²)·(1 + p), Hθ = −(k²·m·sinθ/4πr)·(1 + p + p²), Eφ = (η·k²·m·sinθ/4πr)·(1 + p).
 * Balanis, Antenna Theory, section 5.2; the common phase exp(−jkr) is left out.
 *
 * @param moment turns times current times area (times the rod's gain) (A·m²), rms or peak as the fields are wanted
 * @param frequency (Hz)
 */
public record MagneticDipole(double moment, double frequency) implements Radiator {
    public MagneticDipole {
        if (!(moment >= 0) || Double.isInfinite(moment)) {
            throw new IllegalArgumentException("a magnetic moment is a finite magnitude, not " + moment);
        }
        FreeSpace.positive(frequency, "frequency");
    }

    @Override
    public PointField at(double distance, double angle) {
        FreeSpace.positive(distance, "distance");
        double k = FreeSpace.waveNumber(frequency);
        Complex p = new Complex(0, -1 / (k * distance));
        Complex one = Complex.ONE.add(p);
        double transverse = k * k * moment * Math.sin(angle) / (4 * Math.PI * distance);
        double radial = k * moment * Math.cos(angle) / (2 * Math.PI * distance * distance);
        return new PointField(
                Complex.ZERO,
                Complex.ZERO,
                one.multiply(FreeSpace.IMPEDANCE * transverse),
                one.multiply(new Complex(0, radial)),
                one.add(p.multiply(p)).multiply(-transverse),
                Complex.ZERO);
    }

    /** P = η·k⁴·m²/6π (W). */
    @Override
    public double radiatedPower() {
        double k2 = Math.pow(FreeSpace.waveNumber(frequency), 2) * moment;
        return FreeSpace.IMPEDANCE * k2 * k2 / (6 * Math.PI);
    }

    @Override
    public MagneticDipole scaled(double factor) {
        return new MagneticDipole(moment * factor, frequency);
    }

    /**
     * The dipole whose worst H is a given one.
     *
     * @param magneticField wanted greatest H (A/m)
     * @param distance (m)
     */
    public static MagneticDipole forWorstH(double magneticField, double distance, double frequency) {
        double unit = new MagneticDipole(1, frequency).worstH(distance);
        return new MagneticDipole(magneticField / unit, frequency);
    }

    /**
     * The dipole whose broadside E is a given one.
     *
     * @param electricField wanted E (V/m)
     * @param distance (m)
     */
    public static MagneticDipole forE(double electricField, double distance, double frequency) {
        double unit = new MagneticDipole(1, frequency).worstE(distance);
        return new MagneticDipole(electricField / unit, frequency);
    }
}
