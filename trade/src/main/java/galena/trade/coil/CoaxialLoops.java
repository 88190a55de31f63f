package galena.trade.coil;

import static galena.trade.wire.SkinEffect.MU_0;

import org.hipparchus.special.elliptic.carlson.CarlsonEllipticIntegral;

/**
 * Thin coaxial circles: mutual inductance and field. J. C. Maxwell, Treatise, art. 701; W. R. Smythe, Static and
 * Dynamic Electricity. With s² = (a+r)² + z², the complementary parameter m₁ = ((a−r)² + z²)/s² goes to Carlson's
 * forms directly, so that nearly touching circles lose no digits; K − E = m·D with D = R_D(0, m₁, 1)/3.
 */
public final class CoaxialLoops {
    private CoaxialLoops() {}

    /**
     * M = µ₀·s/2·[(2 − m)K − 2E] (H).
     *
     * @param a radius of one (m)
     * @param r radius of the other (m)
     * @param z distance along the axis (m); the circles must not coincide
     */
    public static double mutual(double a, double r, double z) {
        double s2 = (a + r) * (a + r) + z * z;
        double m1 = ((a - r) * (a - r) + z * z) / s2, m = 4 * a * r / s2;
        // (2 − m)K − 2E = m(2D − K): no difference of large numbers left for distant circles beyond 2D − K itself
        return MU_0 / 2 * Math.sqrt(s2) * m * (2 * bigD(m1) - bigK(m1));
    }

    /**
     * Field of one ampere in a circle of radius a at the origin.
     *
     * @param a radius of the circle (m)
     * @param r distance of the point from the axis, more than 0 (m)
     * @param z its height above the circle's plane (m)
     * @param into written: [0] component along the axis, [1] outwards (A/m per A)
     */
    public static void field(double a, double r, double z, double[] into) {
        double s2 = (a + r) * (a + r) + z * z, s = Math.sqrt(s2), near2 = (a - r) * (a - r) + z * z;
        double m1 = near2 / s2;
        double k = bigK(m1), e = k - 4 * a * r / s2 * bigD(m1);
        into[0] = (k + (a * a - r * r - z * z) / near2 * e) / (2 * Math.PI * s);
        into[1] = z / (2 * Math.PI * r * s) * (-k + (a * a + r * r + z * z) / near2 * e);
    }

    /** Complete elliptic integral of the first kind by complementary parameter. */
    public static double bigK(double m1) {
        return CarlsonEllipticIntegral.rF(0, m1, 1);
    }

    /** Complete elliptic integral of the second kind by complementary parameter. */
    public static double bigE(double m1) {
        return bigK(m1) - (1 - m1) * bigD(m1);
    }

    /** (K − E)/m by complementary parameter. */
    static double bigD(double m1) {
        return CarlsonEllipticIntegral.rD(0, m1, 1) / 3;
    }
}
