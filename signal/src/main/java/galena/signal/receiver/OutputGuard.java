package galena.signal.receiver;

/**
 * Protects ears and loudspeakers: what comes out fades in, and never passes a ceiling. Up to the knee nothing changes; above, the
 * excess is bent towards the ceiling by a hyperbolic tangent. One stream each.
 */
public final class OutputGuard {
    /** Of full scale: −4.4 dB. */
    public static final double KNEE = 0.6;
    /** Of full scale: −1 dB. */
    public static final double CEILING = 0.891;
    /** Seconds of fading in. */
    public static final double FADE = 0.5;

    private final long fade;
    private long at;
    private long bent;

    /** @param rate samples a second, Hz */
    public OutputGuard(double rate) {
        fade = Math.max(1, Math.round(FADE * rate));
    }

    /** In place. */
    public void process(double[] samples, int count) {
        for (int n = 0; n < count; n++, at++) {
            double x = samples[n];
            if (at < fade) {
                double rise = Math.sin(0.5 * Math.PI * at / fade);
                x *= rise * rise;
            }
            double size = Math.abs(x);
            if (size > KNEE) {
                bent++;
                x = Math.copySign(KNEE + (CEILING - KNEE) * Math.tanh((size - KNEE) / (CEILING - KNEE)), x);
            }
            samples[n] = x;
        }
    }

    /** Samples that lay above the knee. */
    public long bent() {
        return bent;
    }
}
