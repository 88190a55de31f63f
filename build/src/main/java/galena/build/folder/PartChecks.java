package galena.build.folder;

import galena.build.form.Filled;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.build.source.Problem;
import galena.build.source.Problems;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Checks within one part that join one key to another. */
final class PartChecks {
    /** What the engine allows of a preset's track at its stops. */
    private static final double LEAST_END = 1e-6;

    private static final double GREATEST_END = 0.2;

    private static final double LEAST_SLENDERNESS = 5;

    private final Filled part;
    private final Problems problems;

    private PartChecks(Filled part, Problems problems) {
        this.part = part;
        this.problems = problems;
    }

    static void check(PartKind kind, Filled part, Problems problems) {
        PartChecks checks = new PartChecks(part, problems);
        switch (kind) {
            case COIL, LOOPSTICK, LOOP -> {
                checks.oneOf("its loss", "q: 85 @ 1 MHz", "q", "resistance");
                checks.setNeedsRange(kind);
                checks.slides();
            }
            case CRYSTAL, RESONATOR -> {
                checks.oneOf(
                        "its motional arm", "motional_capacitance: …", "motional_capacitance", "motional_inductance");
                checks.oneOf("its loss", "resistance: …", "resistance", "q");
            }
            case WIRE -> checks.thin();
            case PRESET -> checks.endResistance();
            case VOLTAGE, CURRENT -> checks.sineNeedsFrequency();
            default -> {}
        }
        checks.shorted(kind);
    }

    /** Exactly one of two keys. */
    private void oneOf(String what, String example, String... keys) {
        List<String> written = Arrays.stream(keys).filter(part::has).toList();
        if (written.size() == 1) return;
        String both = String.join(" and ", keys);
        if (written.isEmpty())
            add(part.path(), "says nothing of " + what, "One of " + both + " is needed.", "Add " + example);
        else
            problems.add(new Problem(
                    part.keyPlace(keys[1]),
                    part.path(keys[1]),
                    "says " + what + " twice",
                    "One of " + both + " is enough.",
                    "Delete one."));
    }

    private void setNeedsRange(PartKind kind) {
        if (!part.has("set") || part.has("slide") || part.quantity(kind.key()).isEmpty()) return;
        problems.add(new Problem(
                part.place("set"),
                part.path("set"),
                "sets a coil that can't be adjusted",
                "A coil with a slug has a range, one that slides says where.",
                kind == PartKind.LOOPSTICK
                        ? "Write loopstick: low..high, or slide: 0..30 mm, or delete set."
                        : "Write " + kind.key() + ": low..high, or delete set."));
    }

    /** A winding that slides has one inductance, a rod to slide on, and no second place. */
    private void slides() {
        if (!part.has("slide")) return;
        if (part.range(PartKind.LOOPSTICK.key()).isPresent())
            slides("is given beside a range of inductance", "Sliding and a slug are two adjustments.", "Delete one.");
        if (part.has("position"))
            slides(
                    "is given beside a position",
                    "With a slide, set tells where the winding stands.",
                    "Delete position.");
        List<String> missing = Stream.of("turns", "rod_length", "rod_diameter", "winding_length")
                .filter(key -> !part.has(key))
                .toList();
        if (!missing.isEmpty())
            slides("has no rod to slide on", "The rod decides what sliding does.", "Add " + String.join(", ", missing));
        double end = part.si("rod_length", Double.POSITIVE_INFINITY) / 2;
        if (part.range("slide").orElseThrow().high().value() > end)
            slides(
                    "goes beyond the end of the rod",
                    "The middle of the winding stays on the rod.",
                    "End at " + Engineering.print(end, Unit.METRE, 3) + " or before.");
    }

    private void slides(String what, String rule, String remedy) {
        problems.add(new Problem(part.place("slide"), part.path("slide"), what, rule, remedy));
    }

    private void endResistance() {
        double track = part.si(PartKind.PRESET.key(), 0);
        double end = part.si("end_resistance", 0);
        if (track == 0 || end == 0) return;
        if (LEAST_END * track <= end && end <= GREATEST_END * track) return;
        problems.add(new Problem(
                part.place("end_resistance"),
                part.path("end_resistance"),
                "is " + Engineering.print(100 * end / track, Unit.NUMBER, 2) + " % of the track",
                "What is left at a stop is between 0.0001 % and 20 % of the track."));
    }

    /** Ten radii long, so that its charge is that of a wire. */
    private void thin() {
        double length = part.si(PartKind.WIRE.key(), 0), diameter = part.si("diameter", 0);
        if (length == 0 || length >= LEAST_SLENDERNESS * diameter) return;
        problems.add(new Problem(
                part.place("diameter"),
                part.path("diameter"),
                "is too thick for " + Engineering.print(length, Unit.METRE, 3),
                "A wire is at least five times as long as thick.",
                "Check the units."));
    }

    private void sineNeedsFrequency() {
        for (String key : List.of("offset", "phase"))
            if (part.has(key) && !part.has("frequency"))
                problems.add(new Problem(
                        part.keyPlace(key),
                        part.path(key),
                        "belongs to a sine",
                        "A sine has a frequency.",
                        "Add frequency: 1 kHz"));
    }

    /** A part whose pins all join one net does nothing: a slip, and a fault for the equations. */
    private void shorted(PartKind kind) {
        List<Optional<String>> nets =
                kind.pins().stream().map(part::text).distinct().toList();
        if (nets.size() > 1 || nets.get(0).isEmpty()) return;
        add(
                part.path(),
                "all pins are joined to " + nets.get(0).get(),
                "A part joins at least two nets.",
                "Correct a pin.");
    }

    private void add(String path, String found, String rule, String remedy) {
        problems.add(new Problem(part.place(), path, found, rule, remedy));
    }
}
