package galena.signal.fit;

/** Two-sided 95 % points for intervals whose noise was itself estimated. */
public final class StudentT {
    private StudentT() {}

    /**
     * The t with P(|T| ≤ t) = 0.95.
     *
     * @param freedom degrees of freedom, at least 1
     * @return exact for 1 and 2, otherwise by the expansion of Abramowitz and Stegun 26.7.5, within 0.3 % from 3 on
     */
    public static double at95(double freedom) {
        if (freedom < 1.5) return 12.7062;
        if (freedom < 2.5) return 4.30265;
        double z = 1.959963984540054;
        double z2 = z * z;
        double g1 = z * (z2 + 1) / 4;
        double g2 = z * ((5 * z2 + 16) * z2 + 3) / 96;
        double g3 = z * (((3 * z2 + 19) * z2 + 17) * z2 - 15) / 384;
        double g4 = z * ((((79 * z2 + 776) * z2 + 1482) * z2 - 1920) * z2 - 945) / 92160;
        return z + (g1 + (g2 + (g3 + g4 / freedom) / freedom) / freedom) / freedom;
    }
}
