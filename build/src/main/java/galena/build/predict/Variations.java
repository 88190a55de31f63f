package galena.build.predict;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.wiring.Assembled;
import galena.build.wiring.Knowledge;
import galena.build.wiring.Unknown;
import galena.engine.circuit.Circuit;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.Part;
import galena.engine.part.Preset;
import galena.engine.part.Resistor;
import galena.engine.part.Resonator;
import galena.engine.part.Trimmer;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * The tolerances of a build's passive values. Parts bring their own or their kind's; a coil's Q, strays, stray couplings and
 * the loss in the ground are nobody's printed value and are taken as known to the shares below (common practice).
 */
final class Variations {
    private static final double Q_KNOWN_TO = 0.2;
    private static final double STRAY_KNOWN_TO = 0.5;
    private static final double COUPLING_KNOWN_TO = 0.2;
    private static final double GROUND_KNOWN_TO = 0.5;

    /** An even distribution of half-width √3 has the standard deviation 1. */
    private static final double ROOT_THREE = Math.sqrt(3);

    private static final double NORMAL_95 = 1.959963984540054;

    private final Circuit circuit;
    private final List<Variation> found = new ArrayList<>();

    private Variations(Circuit circuit) {
        this.circuit = circuit;
    }

    static List<Variation> of(Build build, Assembled assembled) {
        Variations variations = new Variations(assembled.circuit());
        Knowledge knowledge = assembled.knowledge();
        Set<String> read = new HashSet<>();
        for (Unknown unknown : knowledge.unknowns()) if (knowledge.places(unknown)) read.add(unknown.part());
        for (int k = 0; k < knowledge.directions(); k++) variations.left(assembled, k);
        for (Part part : assembled.circuit().parts()) {
            if (read.contains(part.name())) continue;
            String origin = assembled.origin(part.name()).orElse("");
            PartEntry entry =
                    origin.startsWith("parts.") ? build.parts().get(origin.substring("parts.".length())) : null;
            boolean ground = entry != null && entry.kind() == PartKind.WIRE && part instanceof Resistor;
            variations.add(part, ground ? GROUND_KNOWN_TO : entry == null ? 0 : entry.tolerance());
        }
        return List.copyOf(variations.found);
    }

    /** @param tolerance of the build's entry; 0 for parts that are no entry, as strays */
    private void add(Part part, double tolerance) {
        if (part instanceof Resistor r && tolerance > 0) {
            two("", tolerance, r::scaled, part);
        } else if (part instanceof Preset p && tolerance > 0) {
            two("track", tolerance, p::scaled, part);
        } else if (part instanceof Capacitor c) {
            boolean stray = tolerance == 0;
            two(stray ? "taken" : "", stray ? STRAY_KNOWN_TO : tolerance, c::scaled, part);
        } else if (part instanceof Trimmer t && tolerance > 0) {
            two("", tolerance, t::scaled, part);
        } else if (part instanceof Coil coil && tolerance > 0) {
            two("inductance", tolerance, s -> coil.scaled(s, s), part);
            if (coil.seriesResistance() > 0) two("Q", Q_KNOWN_TO, s -> coil.scaled(1, s), part);
        } else if (part instanceof Coupling k && k.k() != 0) {
            two("taken", Math.min(COUPLING_KNOWN_TO, halfWayToFull(k.k())), k::scaled, part);
        } else if (part instanceof Resonator r && tolerance > 0) {
            two("frequency", tolerance, r::retuned, part);
        }
    }

    /** How much more a tight coupling could be, relative: nothing couples windings fully. */
    private static double halfWayToFull(double k) {
        return (1 - Math.abs(k)) / (2 * Math.abs(k));
    }

    /** What the readings of an accepted calibration have left open, in one direction: normal, one deviation long. */
    private void left(Assembled assembled, int direction) {
        found.add(new Variation(
                assembled.knowledge().about(direction) + " as the readings leave it",
                s -> assembled.along(direction, ROOT_THREE * (s - 1)),
                1,
                NORMAL_95 / ROOT_THREE));
    }

    private interface Scaling {
        Part at(double scale);
    }

    private void two(String what, double limit, Scaling scaling, Part part) {
        if (limit >= 1) return;
        String name = part.name()
                + (what.isEmpty() ? "" : " " + what)
                + String.format(Locale.ROOT, " ±%s %%", number(100 * limit));
        found.add(Variation.even(name, s -> circuit.with(scaling.at(s)), limit));
    }

    private static String number(double percent) {
        return percent == Math.rint(percent)
                ? String.format(Locale.ROOT, "%.0f", percent)
                : String.format(Locale.ROOT, "%.2g", percent);
    }
}
