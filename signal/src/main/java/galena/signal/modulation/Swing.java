package galena.signal.modulation;

import galena.signal.Estimate;
import galena.signal.carrier.Baseband;
import galena.signal.fit.RiceInterval;
import galena.signal.fit.SeriesFit;
import galena.signal.spectrum.PeriodicWaveform;

/** Swing, the incidental frequency deviation: peak Hz, counted between 50 Hz and 5 kHz. */
public final class Swing {
    /** Lower edge of the band counted (Hz). */
    public static final double LOWEST = 50;
    /** Upper edge of the band counted (Hz). */
    public static final double HIGHEST = 5000;

    private static final int POINTS = 720;

    private Swing() {}

    /**
     * Swing of a phase known over one audio period, as a prediction knows it.
     *
     * @param phase carrier phase (rad) on a uniform grid over one period, the end point not repeated, troughs bridged
     * @param tone audio frequency (Hz)
     * @return peak deviation (Hz)
     */
    public static double ofPeriod(double[] phase, double tone) {
        PeriodicWaveform series = PeriodicWaveform.of(phase);
        double peak = 0;
        int best = 0;
        for (int p = 0; p < POINTS; p++) {
            double deviation = Math.abs(deviation(series, tone, p));
            if (deviation > peak) {
                peak = deviation;
                best = p;
            }
        }
        double before = Math.abs(deviation(series, tone, best - 1)),
                after = Math.abs(deviation(series, tone, best + 1));
        double curve = before - 2 * peak + after; // a parabola through three points finds the peak between them
        return curve < 0 ? peak - (before - after) * (before - after) / (8 * curve) : peak;
    }

    private static double deviation(PeriodicWaveform series, double tone, int point) {
        double sum = 0;
        for (int k = 1; k <= series.highest() && k * tone <= HIGHEST; k++) {
            if (k * tone < LOWEST) continue;
            sum -= k * tone * series.amplitude(k) * Math.sin(2 * Math.PI * k * point / POINTS + series.phase(k));
        }
        return sum;
    }

    /**
     * Swing from a fitted phase. Harmonics that noise alone explains are left out of the peak; if all are, the
     * interval runs from 0 to what they might hold together.
     *
     * @param phase fit of the carrier's phase (rad) with the harmonics of the tone
     * @param baseband whose filter the phase went through
     */
    static Estimate of(SeriesFit phase, Baseband baseband) {
        double tone = phase.frequency().value();
        int n = phase.harmonics();
        boolean[] counted = new boolean[n];
        double hidden = 0;
        for (int k = 1; k <= n; k++) {
            if (k * tone < LOWEST || k * tone > HIGHEST) continue;
            double amplitude = Math.hypot(phase.cosine(k), phase.sine(k)), sigma = phase.sigmaOfHarmonic(k);
            counted[k - 1] = amplitude > RiceInterval.NOISE_95 * sigma;
            if (!counted[k - 1])
                hidden += Math.pow(k * tone * RiceInterval.of(amplitude, sigma).high(), 2);
        }
        double best = 0, at = 0;
        for (int p = 0; p < POINTS; p++) {
            double deviation = Math.abs(deviation(phase, baseband, counted, p / (POINTS * tone)));
            if (deviation > best) {
                best = deviation;
                at = p / (POINTS * tone);
            }
        }
        double[] c = new double[n], s = new double[n];
        for (int k = 1; k <= n; k++) {
            if (!counted[k - 1]) continue;
            double angle = 2 * Math.PI * k * tone * at;
            c[k - 1] = -k * tone * Math.sin(angle);
            s[k - 1] = k * tone * Math.cos(angle);
        }
        double half = Estimate.NORMAL_95 * phase.sigmaOf(0, c, s);
        if (best == 0) return new Estimate(0, 0, Math.sqrt(hidden));
        return new Estimate(best, Math.max(0, best - half), best + half);
    }

    private static double deviation(SeriesFit phase, Baseband baseband, boolean[] counted, double t) {
        double sum = 0, tone = phase.frequency().value();
        for (int k = 1; k <= counted.length; k++) {
            if (!counted[k - 1]) continue;
            double angle = 2 * Math.PI * k * tone * t;
            sum += k
                    * tone
                    * (phase.sine(k) * Math.cos(angle) - phase.cosine(k) * Math.sin(angle))
                    / baseband.response(k * tone);
        }
        return sum;
    }
}
