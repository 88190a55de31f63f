package galena.build.depth;

import galena.build.depth.Deepened.Condition;
import galena.build.figure.Figure;
import galena.build.modulation.Modulated;
import galena.build.modulation.Modulator;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** One setting in one supply and temperature, asked at audio levels; what was asked once is kept. One thread at a time. */
final class Borne {
    private static final double DEEPEST = 0.995;

    /** From this share of the limit on it is the distortion that ends it. */
    private static final double ENDS = 0.97;

    private final String name;
    private final Modulator modulator;
    private final double limit;
    private final double slope;
    private final Map<Double, Optional<Modulated>> tones = new HashMap<>();

    Borne(String name, Modulator modulator, double limit) {
        this.name = name;
        this.modulator = modulator;
        this.limit = limit;
        slope = modulator.small(Modulator.USUAL_TONE).depth();
    }

    String name() {
        return name;
    }

    /** Depth for a volt of a small tone. */
    double slope() {
        return slope;
    }

    Optional<Modulated> at(double level) {
        return tones.computeIfAbsent(
                level,
                volts -> modulator.at(volts, Modulator.USUAL_TONE) instanceof Modulated tone
                        ? Optional.of(tone)
                        : Optional.empty());
    }

    /** Share of the limit that a level uses, of the distortion's or the trough's, whichever is more; empty where it quits. */
    OptionalDouble used(double level) {
        Optional<Modulated> there = at(level);
        if (there.isEmpty()) return OptionalDouble.empty();
        Modulated tone = there.get();
        return OptionalDouble.of(Math.max(value(tone.distortion()) / limit, value(tone.negativePeak()) / DEEPEST));
    }

    boolean bears(double level) {
        OptionalDouble used = used(level);
        return used.isPresent() && used.getAsDouble() <= 1;
    }

    /** The highest level that it bears, looked for from one nearby. */
    OptionalDouble most(double first) {
        return CleanLevel.find(first, this::used);
    }

    /** The smaller of the two peaks. */
    double depth(double level) {
        Modulated tone = at(level).orElseThrow();
        return Math.min(value(tone.positivePeak()), value(tone.negativePeak()));
    }

    Condition condition(double level, OptionalDouble most) {
        Modulated tone = at(level).orElseThrow(), end = at(most.orElse(level)).orElseThrow();
        return new Condition(
                name,
                most,
                depth(level),
                value(tone.distortion()),
                value(tone.swing()),
                value(end.distortion()) >= ENDS * limit ? "distortion" : "trough",
                value(end.positivePeak()) < value(end.negativePeak()));
    }

    private static double value(Figure figure) {
        return figure instanceof Figure.Known known ? known.value() : 0;
    }
}
