package galena.engine.oracle;

/** The device equations of {@code engine.part} at 25 °C, written a second time from their documentation alone. */
final class HandLaws {
    static final double VT = 1.380649e-23 * 298.15 / 1.602176634e-19;
    private static final double LEAK = 1e-12;

    private HandLaws() {}

    /** A silicon junction's current, leakage included, A. */
    static double diode(double saturation, double emission, double v) {
        return saturation * Math.expm1(v / (emission * VT)) + LEAK * v;
    }

    /** C₀/(1 − v/φ)^m up to φ/2, its tangent beyond. */
    static double depletion(double c0, double phi, double m, double v) {
        if (v <= phi / 2) return c0 * Math.pow(1 - v / phi, -m);
        return c0 * Math.pow(0.5, -m) * (1 + 2 * m * (v / phi - 0.5));
    }

    /** Drain current of an n-channel square-law device, either way round. */
    static double channel(double idss, double pinchOff, double lambda, double vg, double vd, double vs) {
        if (vd < vs) return -channel(idss, pinchOff, lambda, vg, vs, vd);
        double u = vg - vs - pinchOff, vds = vd - vs, beta = idss / (pinchOff * pinchOff);
        if (u <= 0) return 0;
        double linear = Math.min(vds, u);
        return beta * linear * (2 * u - linear) * (1 + lambda * vds);
    }

    /** Solves a · x = b for a few unknowns; a and b are overwritten, b with x. */
    static void solve(double[][] a, double[] b) {
        int n = b.length;
        for (int k = 0; k < n; k++) {
            int p = k;
            for (int r = k + 1; r < n; r++) if (Math.abs(a[r][k]) > Math.abs(a[p][k])) p = r;
            double[] row = a[k];
            a[k] = a[p];
            a[p] = row;
            double value = b[k];
            b[k] = b[p];
            b[p] = value;
            for (int r = k + 1; r < n; r++) {
                double factor = a[r][k] / a[k][k];
                for (int c = k; c < n; c++) a[r][c] -= factor * a[k][c];
                b[r] -= factor * b[k];
            }
        }
        for (int k = n - 1; k >= 0; k--) {
            for (int c = k + 1; c < n; c++) b[k] -= a[k][c] * b[c];
            b[k] /= a[k][k];
        }
    }
}
