package galena.bench.invented;

import java.util.Locale;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/** Spoils a voltage as a plain 8-bit scope does: clock and gain off, noise, jitter, offset, and 256 steps. */
final class Scope {
    private static final double CLOCK = 1 + 14e-6;
    private static final double GAIN = 1.012;
    private static final int STEPS = 256;
    /** The trace fills this share of the screen. */
    private static final double FILLED = 0.85;
    /** Noise in steps of the converter, rms. */
    private static final double NOISE = 0.6;

    private static final double JITTER = 100e-12;
    private static final String INVENTED =
            "invented by galena demo: computed from a changed copy of the demo build, never measured";

    private final double interval;
    private final int samples;
    private final Random random;

    /** @param interval between samples (s) */
    Scope(double interval, int samples, long seed) {
        this.interval = interval;
        this.samples = samples;
        random = new Random(seed);
    }

    /** @param volts against time (s), without its mean */
    private double[] trace(DoubleUnaryOperator volts) {
        double[] trace = new double[samples];
        double largest = 0;
        for (int k = 0; k < samples; k++) {
            double time = k * interval * CLOCK + JITTER * random.nextGaussian();
            trace[k] = GAIN * volts.applyAsDouble(time);
            largest = Math.max(largest, Math.abs(trace[k]));
        }
        double step = nice(2 * largest / FILLED / STEPS);
        for (int k = 0; k < samples; k++)
            trace[k] = step * Math.rint(trace[k] / step + 1.3 + NOISE * random.nextGaussian());
        return trace;
    }

    /** The next of 1, 2, 5 times a power of ten, as gain switches have them. */
    private static double nice(double step) {
        double decade = Math.pow(10, Math.floor(Math.log10(step)));
        for (double m : new double[] {1, 2, 5}) if (m * decade >= step) return m * decade;
        return 10 * decade;
    }

    /** A heading, then one value to a line: the interval stands in the heading alone. */
    String column(DoubleUnaryOperator volts) {
        StringBuilder text = new StringBuilder("Note," + INVENTED + "\nProbe,10x (already taken out)\nSample interval,"
                + nanoseconds(interval) + " ns\nSamples," + samples + "\n\nCH1 (V)\n");
        for (double v : trace(volts))
            text.append(String.format(Locale.ROOT, "%.4g", v)).append('\n');
        return text.toString();
    }

    /** A comment, then time and volts. */
    String table(DoubleUnaryOperator volts) {
        StringBuilder text = new StringBuilder("# " + INVENTED + "\nTime (us);CH1 (V)\n");
        double[] trace = trace(volts);
        for (int k = 0; k < samples; k++)
            text.append(String.format(Locale.ROOT, "%.2f;%.4g", 1e6 * k * interval, trace[k]))
                    .append('\n');
        return text.toString();
    }

    private static String nanoseconds(double seconds) {
        return String.format(Locale.ROOT, "%.0f", 1e9 * seconds);
    }
}
