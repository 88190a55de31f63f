package galena.signal.receiver;

/**
 * An intermediate-frequency filter of n tuned circuits, maximally flat, in its low-pass equivalent: |B| = 1/√(1 + (2δ/b)^2n) at δ from
 * its middle, with b the width between the 3 dB points (S. Butterworth, Exp. Wireless 7 (1930) 536; narrow-band equivalence of
 * tuned and low-pass filters: V. D. Landon, RCA Review 5 (1941) 347). I and Q are filtered alike, by matched sections of the bilinear
 * transform. Mistuning turns the envelope before the filter, so that one sideband is cut more than the other. One stream each.
 */
public final class TunedFilter {
    private static final int MOST = 8;

    private final int circuits;
    private final double half;
    private final double rate;
    private final double[] b0;
    private final double[] a1;
    private final double[] a2;
    private final double[] stateI;
    private final double[] stateQ;

    /**
     * @param circuits 1 to 8
     * @param bandwidth between the 3 dB points, Hz, below half the rate
     * @param rate samples a second, Hz
     */
    public TunedFilter(int circuits, double bandwidth, double rate) {
        if (circuits < 1 || circuits > MOST) throw new IllegalArgumentException("1 to 8 circuits, not " + circuits);
        if (!(bandwidth > 0 && bandwidth < 0.5 * rate))
            throw new IllegalArgumentException(
                    "a bandwidth lies between 0 and half the rate of " + rate + " Hz, not at " + bandwidth);
        this.circuits = circuits;
        this.half = bandwidth / 2;
        this.rate = rate;
        int sections = (circuits + 1) / 2;
        b0 = new double[sections];
        a1 = new double[sections];
        a2 = new double[sections];
        stateI = new double[2 * sections];
        stateQ = new double[2 * sections];
        double w = Math.tan(Math.PI * half / rate);
        for (int s = 0; s < sections; s++) {
            boolean single = circuits % 2 == 1 && s == sections - 1;
            if (single) {
                b0[s] = w / (1 + w);
                a1[s] = (w - 1) / (1 + w);
            } else {
                double damping = 2 * Math.sin(Math.PI * (2 * s + 1) / (2.0 * circuits));
                double norm = 1 + damping * w + w * w;
                b0[s] = w * w / norm;
                a1[s] = 2 * (w * w - 1) / norm;
                a2[s] = (1 - damping * w + w * w) / norm;
            }
        }
    }

    private boolean single(int section) {
        return circuits % 2 == 1 && section == b0.length - 1;
    }

    /** Filters in place. */
    public void process(double[] i, double[] q, int count) {
        for (int s = 0; s < b0.length; s++) {
            if (single(s)) {
                first(i, count, s, stateI);
                first(q, count, s, stateQ);
            } else {
                second(i, count, s, stateI);
                second(q, count, s, stateQ);
            }
        }
    }

    private void first(double[] x, int count, int s, double[] state) {
        double b = b0[s], a = a1[s], z = state[2 * s];
        for (int n = 0; n < count; n++) {
            double in = x[n], out = b * in + z;
            z = b * in - a * out;
            x[n] = out;
        }
        state[2 * s] = z;
    }

    private void second(double[] x, int count, int s, double[] state) {
        double b = b0[s], c1 = a1[s], c2 = a2[s], z1 = state[2 * s], z2 = state[2 * s + 1];
        for (int n = 0; n < count; n++) {
            double in = b * x[n], out = in + z1;
            z1 = 2 * in - c1 * out + z2;
            z2 = in - c2 * out;
            x[n] = out;
        }
        state[2 * s] = z1;
        state[2 * s + 1] = z2;
    }

    /** Complex response at an offset (Hz) from the middle, {real, imaginary}: of the samples, exact. */
    public double[] response(double offset) {
        double angle = -2 * Math.PI * offset / rate, c = Math.cos(angle), s = Math.sin(angle);
        double c2 = c * c - s * s, s2 = 2 * c * s, re = 1, im = 0;
        for (int k = 0; k < b0.length; k++) {
            boolean one = single(k);
            double nr = b0[k] * (one ? 1 + c : 1 + 2 * c + c2), ni = b0[k] * (one ? s : 2 * s + s2);
            double dr = 1 + a1[k] * c + a2[k] * c2, di = a1[k] * s + a2[k] * s2, square = dr * dr + di * di;
            double qr = (nr * dr + ni * di) / square, qi = (ni * dr - nr * di) / square, was = re;
            re = was * qr - im * qi;
            im = was * qi + im * qr;
        }
        return new double[] {re, im};
    }

    /** Width (Hz) of the rectangle that passes as much noise, b · (π/2n)/sin(π/2n). */
    public double noiseBandwidth() {
        double x = Math.PI / (2.0 * circuits);
        return 2 * half * x / Math.sin(x);
    }
}
