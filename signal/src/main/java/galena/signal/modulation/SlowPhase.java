package galena.signal.modulation;

import galena.signal.carrier.Baseband;
import galena.signal.carrier.CarrierTrack;
import galena.signal.fit.SeriesFit;

/**
 * The phase along which an envelope is read: the fitted series, and what a free oscillator wanders beside it, smoothed
 * over 25 ms when the record is long enough to hold such wander.
 */
final class SlowPhase {
    private static final double SMOOTHING = 0.025;

    private SlowPhase() {}

    static double[] followed(CarrierTrack track, Baseband z, SeriesFit fit) {
        double[] tracked = track.phase(), out = new double[tracked.length];
        for (int k = 0; k < out.length; k++) out[k] = fitted(fit, k, out.length, z.interval());
        if (fit.span() < 10 * SMOOTHING) return out;
        int half = (int) (SMOOTHING / 2 / z.interval());
        double[] weights = new double[out.length + 1], sums = new double[out.length + 1];
        for (int k = 0; k < out.length; k++) {
            double w = track.masked(k) ? 0 : z.re(k) * z.re(k) + z.im(k) * z.im(k);
            weights[k + 1] = weights[k] + w;
            sums[k + 1] = sums[k] + w * (tracked[k] - out[k]);
        }
        for (int k = 0; k < out.length; k++) {
            int a = Math.max(0, k - half), b = Math.min(out.length, k + half + 1);
            double weight = weights[b] - weights[a];
            if (weight > 0) out[k] += (sums[b] - sums[a]) / weight;
        }
        return out;
    }

    private static double fitted(SeriesFit fit, int k, int count, double interval) {
        double t = (k - (count - 1) / 2.0) * interval, u = 2.0 * k / (count - 1) - 1;
        double sum = fit.trend(0).value()
                + u * (fit.trend(1).value() + u * fit.trend(2).value());
        for (int h = 1; h <= fit.harmonics(); h++) {
            double angle = 2 * Math.PI * h * fit.frequency().value() * t;
            sum += fit.cosine(h) * Math.cos(angle) + fit.sine(h) * Math.sin(angle);
        }
        return sum;
    }
}
