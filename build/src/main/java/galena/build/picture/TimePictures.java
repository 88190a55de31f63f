package galena.build.picture;

import galena.build.folder.TestPoint;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.engine.envelope.DynamicEnvelope;
import galena.engine.envelope.Envelope;
import galena.engine.envelope.EnvelopeAnswer;
import galena.engine.envelope.SlowSource;
import galena.engine.equations.Equations;
import galena.engine.steady.Waveforms;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a test point shows.
 *
 * @param build its name
 * @param point the test point
 * @param startup from the operating point, kicked by a millivolt; empty where it does not start by itself
 * @param startupTime s from there until the band has nine tenths of the carrier's height; empty where it does not reach it
 * @param carrier a few cycles of the steady oscillation
 * @param tone of the modulated picture, Hz
 * @param level of the audio, peak, V
 * @param modulated two periods of the tone; empty where there is none
 * @param cycles carrier cycles at the crest and in the trough, with the modulated picture
 * @param without why there is no modulated picture; empty where there is
 */
public record TimePictures(
        String build,
        TestPoint point,
        Optional<Strip> startup,
        OptionalDouble startupTime,
        Wave carrier,
        double tone,
        double level,
        Optional<Strip> modulated,
        List<Wave> cycles,
        String without) {
    private static final int CYCLES = 3;
    private static final int POINTS = 240;
    private static final int COLUMNS = 200;
    private static final int HARMONICS = 12;
    private static final int PHASES = 48;
    private static final double TOLERANCE = 2e-3;
    private static final double NEARLY = 0.9;

    public TimePictures {
        cycles = List.copyOf(cycles);
    }

    /**
     * @param running the build with the point's probe connected, unmodulated
     * @param point of it
     * @param tone Hz, above zero
     */
    public static TimePictures of(Running running, TestPoint point, double tone, Progress progress) {
        Waveforms waveforms = running.state().waveforms();
        Equations equations = waveforms.equations();
        int at = equations.net(point.at()), to = equations.net(point.to());
        Optional<Strip> startup = StartupRun.of(running, at, to, progress);
        Optional<String> source = running.audioSource();
        String without = "";
        Optional<Strip> modulated = Optional.empty();
        List<Wave> cycles = List.of();
        if (source.isEmpty() || !(running.audioLevel() > 0)) {
            without = "the build has no audio source with a level";
        } else {
            progress.at(0.6, "modulated carrier");
            EnvelopeAnswer answer = new DynamicEnvelope(TOLERANCE, progress.watch())
                    .solve(running.state(), new SlowSource(source.get(), running.audioLevel(), tone));
            if (answer instanceof Envelope envelope) {
                Modulated m = new Modulated(envelope, at, to);
                modulated = Optional.of(m.strip());
                cycles = List.of(m.cycles("crest", m.place(1)), m.cycles("trough", m.place(-1)));
            } else {
                without = String.valueOf(answer);
            }
        }
        Wave carrier = carrier(waveforms, at, to);
        return new TimePictures(
                running.build().name(),
                point,
                startup,
                startup.isPresent() ? risen(startup.get(), carrier) : OptionalDouble.empty(),
                carrier,
                tone,
                running.audioLevel(),
                modulated,
                cycles,
                without);
    }

    private static OptionalDouble risen(Strip strip, Wave carrier) {
        double height = Arrays.stream(carrier.volts()).max().orElse(0)
                - Arrays.stream(carrier.volts()).min().orElse(0);
        for (int k = 0; k < strip.time().length; k++)
            if (strip.height(k) >= NEARLY * height) return OptionalDouble.of(strip.time()[k]);
        return OptionalDouble.empty();
    }

    private static Wave carrier(Waveforms waveforms, int at, int to) {
        double[] time = new double[POINTS + 1], volts = new double[POINTS + 1];
        for (int k = 0; k <= POINTS; k++) {
            double turn = CYCLES * k / (double) POINTS;
            double[] x = waveforms.at(turn - Math.floor(turn));
            time[k] = turn / waveforms.frequency();
            volts[k] = x[at] - x[to];
        }
        return new Wave("carrier", time, volts);
    }

    /** A modulated voltage as its harmonics make it, moment by moment of the tone. */
    private static final class Modulated {
        private final Envelope envelope;
        private final double[] mean;
        private final double[][][] harmonic = new double[HARMONICS + 1][][];
        private final double[] low;
        private final double[] high;

        Modulated(Envelope envelope, int at, int to) {
            this.envelope = envelope;
            mean = envelope.mean(at, to);
            for (int h = 1; h <= HARMONICS; h++) harmonic[h] = envelope.baseband(at, to, h);
            low = new double[mean.length];
            high = new double[mean.length];
            for (int i = 0; i < mean.length; i++) {
                low[i] = Double.POSITIVE_INFINITY;
                high[i] = Double.NEGATIVE_INFINITY;
                for (int p = 0; p < PHASES; p++) {
                    double v = volts(i, p / (double) PHASES);
                    low[i] = Math.min(low[i], v);
                    high[i] = Math.max(high[i], v);
                }
            }
        }

        private double volts(int i, double turn) {
            double sum = mean[i];
            for (int h = 1; h <= HARMONICS; h++) {
                double angle = 2 * Math.PI * h * turn;
                sum += harmonic[h][0][i] * Math.cos(angle) - harmonic[h][1][i] * Math.sin(angle);
            }
            return sum;
        }

        /** The slow point with the greatest (1) or the least (−1) height. */
        int place(int sign) {
            int best = 0;
            for (int i = 1; i < mean.length; i++)
                if (sign * (high[i] - low[i]) > sign * (high[best] - low[best])) best = i;
            return best;
        }

        Strip strip() {
            double period = 1 / envelope.source().frequency();
            double[] time = new double[COLUMNS + 1], l = new double[COLUMNS + 1], h = new double[COLUMNS + 1];
            for (int c = 0; c <= COLUMNS; c++) {
                time[c] = 2 * period * c / COLUMNS;
                double place = 2.0 * c / COLUMNS * mean.length;
                int i = (int) Math.floor(place);
                double share = place - i;
                l[c] = between(low, i, share);
                h[c] = between(high, i, share);
            }
            return new Strip(time, l, h);
        }

        private static double between(double[] v, int i, double share) {
            double a = v[i % v.length], b = v[(i + 1) % v.length];
            return a + share * (b - a);
        }

        Wave cycles(String name, int i) {
            double[] time = new double[POINTS + 1], volts = new double[POINTS + 1];
            for (int k = 0; k <= POINTS; k++) {
                double turn = CYCLES * k / (double) POINTS;
                time[k] = turn / envelope.frequency();
                volts[k] = volts(i, turn);
            }
            return new Wave(name, time, volts);
        }
    }
}
