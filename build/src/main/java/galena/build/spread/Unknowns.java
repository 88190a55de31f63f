package galena.build.spread;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.wiring.Assembled;
import galena.build.wiring.Specimens;
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
 * What is drawn of a build's parts: values evenly within their tolerance; a coil's Q, strays and couplings within what is known of
 * them (common practice); devices physically, as their sheets allow.
 */
final class Unknowns {
    private static final double Q_KNOWN_TO = 0.2;
    private static final double STRAY_KNOWN_TO = 0.5;
    private static final double COUPLING_KNOWN_TO = 0.2;
    private static final double GROUND_KNOWN_TO = 0.5;
    private static final String PARTS = "parts.";

    private Unknowns() {}

    static List<Unknown> of(Build build, Assembled assembled) {
        List<Unknown> unknowns = new ArrayList<>();
        for (Part part : assembled.circuit().parts()) {
            String origin = assembled.origin(part.name()).orElse("");
            PartEntry entry = origin.startsWith(PARTS) ? build.parts().get(origin.substring(PARTS.length())) : null;
            boolean ground = entry != null && entry.kind() == PartKind.WIRE && part instanceof Resistor;
            add(unknowns, part, ground ? GROUND_KNOWN_TO : entry == null ? 0 : entry.tolerance());
            if (entry != null && entry.name().equals(part.name())) {
                Specimens.drawn(build, entry, part)
                        .ifPresent(draw -> unknowns.add(new Unknown(
                                entry.name() + " (" + entry.label() + ")",
                                part.name(),
                                draw.numbers(),
                                (sofar, u, at) -> draw.at(u, at))));
            }
        }
        return List.copyOf(unknowns);
    }

    private static void add(List<Unknown> to, Part part, double tolerance) {
        if (part instanceof Resistor && tolerance > 0) {
            to.add(unknown(part, "", tolerance, (p, s) -> ((Resistor) p).scaled(s)));
        } else if (part instanceof Preset && tolerance > 0) {
            to.add(unknown(part, "track", tolerance, (p, s) -> ((Preset) p).scaled(s)));
        } else if (part instanceof Capacitor) {
            double limit = tolerance > 0 ? tolerance : STRAY_KNOWN_TO;
            to.add(unknown(part, tolerance > 0 ? "" : "taken", limit, (p, s) -> ((Capacitor) p).scaled(s)));
        } else if (part instanceof Trimmer && tolerance > 0) {
            to.add(unknown(part, "", tolerance, (p, s) -> ((Trimmer) p).scaled(s)));
        } else if (part instanceof Coil && tolerance > 0) {
            to.add(unknown(part, "inductance", tolerance, (p, s) -> ((Coil) p).scaled(s, s)));
            to.add(unknown(part, "Q", Q_KNOWN_TO, (p, s) -> ((Coil) p).scaled(1, 1 / s)));
        } else if (part instanceof Coupling) {
            to.add(unknown(part, "taken", COUPLING_KNOWN_TO, (p, s) -> ((Coupling) p).scaled(s)));
        } else if (part instanceof Resonator && tolerance > 0) {
            to.add(unknown(part, "frequency", tolerance, (p, s) -> ((Resonator) p).retuned(s)));
        }
    }

    private interface Scaling {
        Part by(Part part, double factor);
    }

    private static Unknown unknown(Part part, String what, double limit, Scaling scaling) {
        String percent = 100 * limit == Math.rint(100 * limit)
                ? String.format(Locale.ROOT, "%.0f", 100 * limit)
                : String.format(Locale.ROOT, "%.2g", 100 * limit);
        String name = part.name() + (what.isEmpty() ? "" : " " + what) + " ±" + percent + " %";
        return new Unknown(name, part.name(), 1, (sofar, u, at) -> scaling.by(sofar, Unknown.even(u[at], limit)));
    }
}
