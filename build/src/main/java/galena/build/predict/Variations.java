package galena.build.predict;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.wiring.Assembled;
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
import java.util.List;
import java.util.Locale;

/**
 * The tolerances of a build's passive values. Parts bring their own or their kind's; a coil's Q, strays, stray couplings and
 * the loss in the ground are nobody's printed value and are taken as known to the shares below (common practice).
 */
final class Variations {
    private static final double Q_KNOWN_TO = 0.2;
    private static final double STRAY_KNOWN_TO = 0.5;
    private static final double COUPLING_KNOWN_TO = 0.2;
    private static final double GROUND_KNOWN_TO = 0.5;

    private final Circuit circuit;
    private final List<Variation> found = new ArrayList<>();

    private Variations(Circuit circuit) {
        this.circuit = circuit;
    }

    static List<Variation> of(Build build, Assembled assembled) {
        Variations variations = new Variations(assembled.circuit());
        for (Part part : assembled.circuit().parts()) {
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

    private interface Scaling {
        Part at(double scale);
    }

    private void two(String what, double limit, Scaling scaling, Part part) {
        if (limit >= 1) return;
        String name = part.name()
                + (what.isEmpty() ? "" : " " + what)
                + String.format(Locale.ROOT, " ±%s %%", number(100 * limit));
        found.add(new Variation(name, s -> circuit.with(scaling.at(s)), limit));
    }

    private static String number(double percent) {
        return percent == Math.rint(percent)
                ? String.format(Locale.ROOT, "%.0f", percent)
                : String.format(Locale.ROOT, "%.2g", percent);
    }
}
