package galena.signal.receiver;

/**
 * Gaussian noise from a seed: G. Marsaglia's and W. W. Tsang's ziggurat of 128 steps, J. Stat. Software 5 (2000) 8, on 64-bit
 * xorshift numbers, the step and the place from different bits. The same seed gives the same noise everywhere. One stream each.
 */
public final class Noise {
    private static final int STEPS = 128;
    private static final double TAIL = 3.442619855899;
    private static final double AREA = 9.91256303526217e-3;
    private static final double[] WIDTH = new double[STEPS + 1];
    private static final double[] RATIO = new double[STEPS];
    private static final double[] HEIGHT = new double[STEPS + 1];

    static {
        double f = Math.exp(-0.5 * TAIL * TAIL);
        WIDTH[0] = AREA / f;
        WIDTH[1] = TAIL;
        for (int k = 2; k < STEPS; k++) {
            WIDTH[k] = Math.sqrt(-2 * Math.log(AREA / WIDTH[k - 1] + f));
            f = Math.exp(-0.5 * WIDTH[k] * WIDTH[k]);
        }
        for (int k = 0; k < STEPS; k++) RATIO[k] = WIDTH[k + 1] / WIDTH[k];
        for (int k = 0; k <= STEPS; k++) HEIGHT[k] = Math.exp(-0.5 * WIDTH[k] * WIDTH[k]);
    }

    private long state;

    public Noise(long seed) {
        state = seed * 0x9e3779b97f4a7c15L ^ 0xbf58476d1ce4e5b9L;
        if (state == 0) state = 1;
        for (int k = 0; k < 16; k++) bits();
    }

    private long bits() {
        long x = state;
        x ^= x << 13;
        x ^= x >>> 7;
        x ^= x << 17;
        state = x;
        return x * 0x2545f4914f6cdd1dL;
    }

    private double uniform() {
        return (bits() >>> 11) * 0x1p-53;
    }

    /** One number of mean 0 and variance 1. */
    public double next() {
        while (true) {
            long r = bits();
            int step = (int) (r >>> 57);
            double u = 2 * ((r & 0x1fffffffffffffL) * 0x1p-53) - 1;
            if (Math.abs(u) < RATIO[step]) return u * WIDTH[step];
            if (step == 0) return tail(u < 0);
            double x = u * WIDTH[step];
            double y = HEIGHT[step] + uniform() * (HEIGHT[step + 1] - HEIGHT[step]);
            if (y < Math.exp(-0.5 * x * x)) return x;
        }
    }

    private double tail(boolean negative) {
        while (true) {
            double x = -Math.log(1 - uniform()) / TAIL, y = -Math.log(1 - uniform());
            if (2 * y > x * x) return negative ? -TAIL - x : TAIL + x;
        }
    }

    /** Adds noise of a standard deviation to both, independent of each other. */
    public void add(double[] i, double[] q, int count, double deviation) {
        for (int n = 0; n < count; n++) {
            i[n] += deviation * next();
            q[n] += deviation * next();
        }
    }
}
