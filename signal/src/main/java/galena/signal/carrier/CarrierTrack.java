package galena.signal.carrier;

/**
 * The carrier's phase through a modulated record, known up to whole turns even where the envelope goes through zero and
 * comes back reversed. Steps of the phase are taken modulo half a turn, so a reversal is no step; samples in a trough
 * below 5 % of the mean carrier carry no phase and are bridged.
 */
public final class CarrierTrack {
    /** Troughs below this fraction of the mean magnitude are masked. */
    public static final double TROUGH = 0.05;

    private final double[] phase;
    private final boolean[] masked;
    private final double[] envelope;

    private CarrierTrack(double[] phase, boolean[] masked, double[] envelope) {
        this.phase = phase;
        this.masked = masked;
        this.envelope = envelope;
    }

    /** Follows a baseband, which is read. */
    public static CarrierTrack of(Baseband z) {
        int n = z.length();
        double mean = 0;
        for (int k = 0; k < n; k++) mean += Math.hypot(z.re(k), z.im(k)) / n;
        double threshold = Math.max(TROUGH * mean, 6 * noise(z));
        double[] phase = new double[n];
        boolean[] masked = new boolean[n];
        int last = -1;
        for (int k = 0; k < n; k++) {
            masked[k] = Math.hypot(z.re(k), z.im(k)) < threshold;
            if (masked[k]) continue;
            double theta = Math.atan2(z.im(k), z.re(k));
            if (last < 0) {
                phase[k] = theta;
            } else {
                double step = theta - phase[last];
                phase[k] = phase[last] + step - Math.PI * Math.rint(step / Math.PI);
            }
            bridge(phase, last, k);
            last = k;
        }
        for (int k = Math.max(0, last + 1); k < n && last >= 0; k++) phase[k] = phase[last];
        return new CarrierTrack(phase, masked, signed(z, phase));
    }

    private static void bridge(double[] phase, int last, int next) {
        for (int k = last + 1; k < next; k++) {
            double share = last < 0 ? 1 : (k - last) / (double) (next - last);
            phase[k] = last < 0 ? phase[next] : phase[last] + share * (phase[next] - phase[last]);
        }
    }

    /** The envelope along the tracked phase, turned so that its mean is positive; turns the phase with it. */
    private static double[] signed(Baseband z, double[] phase) {
        double[] envelope = alongPhase(z, phase);
        double sum = 0;
        for (double e : envelope) sum += e;
        if (sum < 0) {
            for (int k = 0; k < envelope.length; k++) {
                envelope[k] = -envelope[k];
                phase[k] += Math.PI;
            }
        }
        return envelope;
    }

    /** In-phase part of z along a given phase (rad): Re z exp(−jφ). */
    public static double[] alongPhase(Baseband z, double[] phase) {
        double[] out = new double[z.length()];
        for (int k = 0; k < out.length; k++) out[k] = z.re(k) * Math.cos(phase[k]) + z.im(k) * Math.sin(phase[k]);
        return out;
    }

    /** Quadrature part of z along a given phase (rad): Im z exp(−jφ). */
    public static double[] acrossPhase(Baseband z, double[] phase) {
        double[] out = new double[z.length()];
        for (int k = 0; k < out.length; k++) out[k] = z.im(k) * Math.cos(phase[k]) - z.re(k) * Math.sin(phase[k]);
        return out;
    }

    /** Rough noise of each quadrature from third differences, which audio hardly enters. */
    private static double noise(Baseband z) {
        double sum = 0;
        int n = z.length();
        for (int k = 3; k < n; k++) {
            double re = z.re(k) - 3 * z.re(k - 1) + 3 * z.re(k - 2) - z.re(k - 3);
            double im = z.im(k) - 3 * z.im(k - 1) + 3 * z.im(k - 2) - z.im(k - 3);
            sum += re * re + im * im;
        }
        return n < 8 ? 0 : Math.sqrt(sum / (2 * 20.0 * (n - 3)));
    }

    /** Phase (rad) at each baseband sample, relative to the frequency mixed with. */
    public double[] phase() {
        return phase.clone();
    }

    /** Whether sample k lies in a masked trough. */
    public boolean masked(int k) {
        return masked[k];
    }

    /** Magnitude with the sign that the phase gives it: negative past 100 %. */
    public double[] envelope() {
        return envelope.clone();
    }
}
