package galena.build.modulation;

import galena.signal.modulation.EnvelopePeriod;
import galena.signal.modulation.Swing;
import java.util.ArrayList;
import java.util.List;

/**
 * A carrier's complex envelope over one audio period, read as envelope along the carrier's own phase and as swing. The phase is
 * that of the squared envelope, halved, so that it goes on through a trough that passes zero; where the envelope is below 5 %
 * of the carrier it is bridged.
 */
final class Trace {
    private static final int PLACES = 512;
    private static final int SAMPLES = 128;
    private static final double MASKED = 0.05;

    /** A sine stays within a hundredth of its height of its crest for 6 % of its period. */
    private static final double FLAT = 0.01;

    private static final double CLIPPED = 0.14;
    private static final double DEAD = 0.02;
    private static final double PAST = 1.005;

    private final double[] envelope = new double[PLACES];
    private final double[] phase = new double[PLACES];
    private final double carrier;
    private final double tone;
    private final EnvelopePeriod period;
    private int dead;

    /**
     * @param z real and imaginary parts at equally spaced points of the audio period, an odd number
     * @param carrier unmodulated peak amplitude, same unit
     * @param tone audio frequency, Hz
     */
    Trace(double[][] z, double carrier, double tone) {
        this.carrier = carrier;
        this.tone = tone;
        double[][] fine = {interpolated(z[0]), interpolated(z[1])};
        findPhase(fine);
        double sum = 0;
        for (int k = 0; k < PLACES; k++) {
            envelope[k] = fine[0][k] * Math.cos(phase[k]) + fine[1][k] * Math.sin(phase[k]);
            sum += envelope[k];
            if (Math.hypot(fine[0][k], fine[1][k]) < DEAD * carrier) dead++;
        }
        if (sum < 0) for (int k = 0; k < PLACES; k++) envelope[k] = -envelope[k];
        double[] samples = new double[SAMPLES];
        for (int k = 0; k < SAMPLES; k++) samples[k] = envelope[k * PLACES / SAMPLES];
        period = new EnvelopePeriod(samples, carrier);
    }

    /** The trigonometric polynomial through an odd number of points, on a finer grid. */
    private static double[] interpolated(double[] v) {
        double[] fine = new double[PLACES];
        for (int p = 0; p < PLACES; p++) {
            for (int j = 0; j < v.length; j++) {
                double half = Math.PI * (p / (double) PLACES - j / (double) v.length), sin = Math.sin(half);
                fine[p] += v[j] * (Math.abs(sin) < 1e-13 ? 1 : Math.sin(v.length * half) / (v.length * sin));
            }
        }
        return fine;
    }

    private void findPhase(double[][] z) {
        int first = 0;
        double most = -1;
        for (int k = 0; k < PLACES; k++) {
            double size = Math.hypot(z[0][k], z[1][k]);
            if (size > most) {
                most = size;
                first = k;
            }
        }
        double start = doubled(z, first), last = start;
        int lastAt = first;
        phase[first] = start / 2;
        double ramp = 0;
        for (int step = 1; step <= PLACES; step++) {
            int k = (first + step) % PLACES;
            if (step < PLACES && Math.hypot(z[0][k], z[1][k]) < MASKED * carrier) continue;
            double turned = doubled(z, k);
            double next = turned - 2 * Math.PI * Math.rint((turned - last) / (2 * Math.PI));
            bridge(lastAt, first + step, last, next);
            if (step == PLACES) ramp = next - start;
            last = next;
            lastAt = first + step;
        }
        // a trough passed on the far side turns the squared envelope once around: no frequency, and taken out evenly
        for (int step = 0; step < PLACES; step++) phase[(first + step) % PLACES] -= ramp / 2 * step / PLACES;
    }

    private static double doubled(double[][] z, int k) {
        double re = z[0][k], im = z[1][k];
        return Math.atan2(2 * re * im, re * re - im * im);
    }

    private void bridge(int from, int to, double start, double end) {
        for (int k = from + 1; k <= to; k++) {
            if (k - from >= PLACES) continue;
            phase[k % PLACES] = (start + (end - start) * (k - from) / (to - from)) / 2;
        }
    }

    EnvelopePeriod period() {
        return period;
    }

    double swing() {
        return Swing.ofPeriod(phase, tone);
    }

    /** Envelope along the carrier's phase over the audio period, the end not repeated; unit of the carrier. */
    double[] envelope() {
        return envelope.clone();
    }

    /** Share of the audio period in which hardly anything is left. */
    double deadTime() {
        return dead / (double) PLACES;
    }

    List<Trouble> troubles(boolean quits) {
        List<Trouble> troubles = new ArrayList<>();
        if (quits) troubles.add(Trouble.QUITS);
        double low = Double.POSITIVE_INFINITY, high = Double.NEGATIVE_INFINITY;
        for (double e : envelope) {
            low = Math.min(low, e);
            high = Math.max(high, e);
        }
        if (period.negativePeak() > PAST) troubles.add(Trouble.OVERMODULATED);
        int top = 0, bottom = 0;
        for (double e : envelope) {
            if (e > high - FLAT * (high - low)) top++;
            if (e < low + FLAT * (high - low)) bottom++;
        }
        if (top > CLIPPED * PLACES) troubles.add(Trouble.CREST_CLIPS);
        if (bottom > CLIPPED * PLACES && !quits) troubles.add(Trouble.TROUGH_CLIPS);
        return troubles;
    }
}
