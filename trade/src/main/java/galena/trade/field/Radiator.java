package galena.trade.field;

/** A source of field that is small against the wavelength; a dipole is small against its distance, too. */
public sealed interface Radiator permits MagneticDipole, ElectricDipole, WireCurrent {
    /** (Hz). */
    double frequency();

    /**
     * Field at a point.
     *
     * @param distance from the centre (m)
     * @param angle from the dipole's axis (rad)
     */
    PointField at(double distance, double angle);

    /** The same on the axis. */
    default PointField onAxis(double distance) {
        return at(distance, 0);
    }

    /** The same at right angles to the axis. */
    default PointField broadside(double distance) {
        return at(distance, Math.PI / 2);
    }

    /** Radiated power (W) of an rms moment. */
    double radiatedPower();

    /** The same aerial with its current, and so its moment, times {@code factor}. */
    Radiator scaled(double factor);

    /**
     * Greatest E anywhere at this distance (V/m). The squared fields are convex in cos²θ, so the extremes lie on the axis
     * or broadside.
     */
    default double worstE(double distance) {
        return Math.max(onAxis(distance).greatestE(), broadside(distance).greatestE());
    }

    /** Greatest H anywhere at this distance (A/m). */
    default double worstH(double distance) {
        return Math.max(onAxis(distance).greatestH(), broadside(distance).greatestH());
    }

    /** Greatest H anywhere at this distance times 377 Ω (V/m): what a loop calibrated in far-field terms shows. */
    default double worstLoopEquivalent(double distance) {
        return worstH(distance) * FreeSpace.IMPEDANCE;
    }
}
