package galena.signal.modulation;

import galena.signal.carrier.Baseband;
import galena.signal.carrier.CarrierTrack;
import galena.signal.fit.SeriesFit;

/**
 * The carrier's phase in three parts: a fitted trend, the fitted swing in step with the tone, and what a free oscillator
 * wanders beside both, smoothed over 25 ms when the record is long enough to hold such wander.
 */
final class SlowPhase {
    private static final double SMOOTHING = 0.025;

    private SlowPhase() {}

    /** Whether the record is long enough for wander to be told from the fit. */
    static boolean wanders(SeriesFit fit) {
        return fit.span() >= 10 * SMOOTHING;
    }

    /** Wander beside a fit (rad), at each sample of z: what the fit leaves over, smoothed with the envelope's weight. */
    static double[] wander(CarrierTrack track, Baseband z, SeriesFit fit) {
        double[] tracked = track.phase(), fitted = fitted(fit, z, true), out = new double[tracked.length];
        if (!wanders(fit)) return out;
        int half = (int) (SMOOTHING / 2 / z.interval());
        double[] weights = new double[out.length + 1], sums = new double[out.length + 1];
        for (int k = 0; k < out.length; k++) {
            double w = track.masked(k) ? 0 : z.re(k) * z.re(k) + z.im(k) * z.im(k);
            weights[k + 1] = weights[k] + w;
            sums[k + 1] = sums[k] + w * (tracked[k] - fitted[k]);
        }
        for (int k = 0; k < out.length; k++) {
            int a = Math.max(0, k - half), b = Math.min(out.length, k + half + 1);
            double weight = weights[b] - weights[a];
            if (weight > 0) out[k] = (sums[b] - sums[a]) / weight;
        }
        return out;
    }

    /** The fitted phase (rad) at each sample of z, with or without the swing. */
    static double[] fitted(SeriesFit fit, Baseband z, boolean withSwing) {
        int n = z.length();
        double[] out = new double[n];
        double a = fit.trend(0).value(),
                b = fit.trend(1).value(),
                c = fit.trend(2).value(),
                f = fit.frequency().value();
        for (int k = 0; k < n; k++) {
            double t = (k - (n - 1) / 2.0) * z.interval(), u = 2.0 * k / (n - 1) - 1;
            out[k] = a + u * (b + u * c);
            for (int h = 1; h <= fit.harmonics() && withSwing; h++) {
                double angle = 2 * Math.PI * h * f * t;
                out[k] += fit.cosine(h) * Math.cos(angle) + fit.sine(h) * Math.sin(angle);
            }
        }
        return out;
    }

    /** Element by element a + sign·b. */
    static double[] joined(double[] a, int sign, double[] b) {
        double[] out = new double[a.length];
        for (int k = 0; k < out.length; k++) out[k] = a[k] + sign * b[k];
        return out;
    }
}
