package galena.trade.coil;

import static galena.trade.wire.SkinEffect.MU_0;

/** One thin ring of round wire, F. W. Grover, Inductance Calculations (1946); error of order (wire/ring)². */
final class CircularLoop {
    private CircularLoop() {}

    /**
     * µ₀a[ln(8a/b) − 2 + internal/4] (H).
     *
     * @param a radius of the ring to wire centre (m)
     * @param b radius of the wire (m)
     * @param internal 1 for uniform current, 0 for current in the skin
     */
    static double inductance(double a, double b, double internal) {
        return MU_0 * a * (Math.log(8 * a / b) - 2 + internal / 4);
    }
}
