package galena.build.wiring;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What is not known of a build's parts: values evenly within their tolerance; a coil's Q, strays and couplings within what is known of
 * them (common practice); devices physically, as their sheets allow. And capacitance that nobody drew, {@link #added}.
 */
public final class Unknowns {
    private static final double Q_KNOWN_TO = 0.2;
    private static final double STRAY_KNOWN_TO = 0.5;
    private static final double COUPLING_KNOWN_TO = 0.2;
    private static final double GROUND_KNOWN_TO = 0.5;
    private static final String PARTS = "parts.";
    private static final String ADDED = "added";
    private static final String ADDED_HOT = "added between";
    private static final String ADDED_K = "added k";
    private static final double ADDED_COUPLING = 2e-3;
    private static final double ADDED_TO_GROUND = 2e-12;
    private static final double ADDED_BETWEEN = 0.5e-12;

    private Unknowns() {}

    /** Of the circuit as it stands before a calibration. */
    public static List<Unknown> of(Build build, Assembled assembled) {
        List<Unknown> unknowns = new ArrayList<>();
        for (Part part : assembled.base().parts()) {
            Optional<Unknown> added = added(part);
            if (added.isPresent()) {
                unknowns.add(added.get());
                continue;
            }
            String origin = assembled.origin(part.name()).orElse("");
            PartEntry entry = origin.startsWith(PARTS) ? build.parts().get(origin.substring(PARTS.length())) : null;
            boolean ground = entry != null && entry.kind() == PartKind.WIRE && part instanceof Resistor;
            add(unknowns, part, ground ? GROUND_KNOWN_TO : entry == null ? 0 : entry.tolerance());
            if (entry != null && entry.name().equals(part.name())) {
                Specimens.drawn(build, entry, part).ifPresent(draw -> unknowns.add(device(entry, part, draw)));
            }
        }
        return List.copyOf(unknowns);
    }

    private static Unknown device(PartEntry entry, Part part, Draw draw) {
        List<String> keys = new ArrayList<>();
        for (int k = 0; k < draw.numbers(); k++) keys.add(part.name() + " " + draw.name(k));
        String what = entry.name() + " (" + entry.label() + ")";
        return new Unknown(what, part.name(), part.getClass(), keys, Bend.EVEN, (sofar, u, at) -> draw.at(u, at));
    }

    /** Numbers of the unit cube that a build takes. */
    public static int numbers(List<Unknown> unknowns) {
        return unknowns.stream().mapToInt(Unknown::numbers).sum();
    }

    /** The circuit of these numbers. What a circuit has not, or has as another kind of part, stays as it is. */
    public static Circuit drawn(List<Unknown> unknowns, Circuit circuit, double[] u) {
        Map<String, Part> parts = new LinkedHashMap<>();
        for (Part part : circuit.parts()) parts.put(part.name(), part);
        int at = 0;
        for (Unknown unknown : unknowns) {
            Part sofar = parts.get(unknown.part());
            if (sofar != null && unknown.isOf(sofar)) {
                parts.put(unknown.part(), unknown.draw().from(sofar, u, at));
            }
            at += unknown.numbers();
        }
        return Circuit.of(new ArrayList<>(parts.values())).atTemperature(circuit.temperature());
    }

    /**
     * A capacitor in the place of capacitance that nobody drew, between two nets. How much there is falls off exponentially from
     * none, with a mean of 2 pF against ground, which stands for all nets at rest, and 0.5 pF between two that swing (common practice).
     */
    public static Capacitor added(String from, String to) {
        boolean atRest = to.equals(Circuit.GROUND);
        double mean = atRest ? ADDED_TO_GROUND : ADDED_BETWEEN;
        return new Capacitor((atRest ? ADDED : ADDED_HOT) + "(" + from + "," + to + ")", from, to, mean);
    }

    /** A coupling of two coils that nobody drew: none in the middle, with a standard deviation of 0.002 (common practice). */
    public static Coupling addedCoupling(String first, String second) {
        return new Coupling(ADDED_K + "(" + first + "," + second + ")", first, second, 0);
    }

    /** What a calibration puts in where nobody drew anything, by its key. */
    static Part added(String key, String from, String to) {
        return key.startsWith("coupling") ? addedCoupling(from, to) : added(from, to);
    }

    private static Optional<Unknown> added(Part part) {
        if (part instanceof Coupling k && k.name().startsWith(ADDED_K)) {
            String key = "coupling added between " + k.first() + " and " + k.second();
            return Optional.of(new Unknown(
                    key,
                    k.name(),
                    Coupling.class,
                    List.of(key),
                    Bend.NORMAL,
                    (sofar, u, at) ->
                            new Coupling(k.name(), k.first(), k.second(), ADDED_COUPLING * Bend.normal(u[at]))));
        }
        if (!(part instanceof Capacitor c) || !c.name().startsWith(ADDED)) return Optional.empty();
        double mean = c.name().startsWith(ADDED_HOT) ? ADDED_BETWEEN : ADDED_TO_GROUND;
        String key = addedKey(c.from(), c.to());
        return Optional.of(new Unknown(
                key, c.name(), Capacitor.class, List.of(key), Bend.EXPONENTIAL, (sofar, u, at) -> ((Capacitor) sofar)
                        .scaled(-Math.log1p(-u[at]) * mean / ((Capacitor) sofar).capacitance())));
    }

    /** "capacitance added from drain to ground" */
    public static String addedKey(String from, String to) {
        return "capacitance added from " + from + " to " + to;
    }

    private static void add(List<Unknown> to, Part part, double tolerance) {
        if (part instanceof Resistor && tolerance > 0) {
            to.add(unknown(part, Resistor.class, "", tolerance, Resistor::scaled));
        } else if (part instanceof Preset && tolerance > 0) {
            to.add(unknown(part, Preset.class, "track", tolerance, Preset::scaled));
        } else if (part instanceof Capacitor) {
            double limit = tolerance > 0 ? tolerance : STRAY_KNOWN_TO;
            to.add(unknown(part, Capacitor.class, tolerance > 0 ? "" : "taken", limit, Capacitor::scaled));
        } else if (part instanceof Trimmer && tolerance > 0) {
            to.add(unknown(part, Trimmer.class, "", tolerance, Trimmer::scaled));
        } else if (part instanceof Coil && tolerance > 0) {
            to.add(unknown(part, Coil.class, "inductance", tolerance, (p, s) -> p.scaled(s, s)));
            to.add(unknown(part, Coil.class, "Q", Q_KNOWN_TO, (p, s) -> p.scaled(1, 1 / s)));
        } else if (part instanceof Coupling) {
            to.add(unknown(part, Coupling.class, "taken", COUPLING_KNOWN_TO, Coupling::scaled));
        } else if (part instanceof Resonator && tolerance > 0) {
            to.add(unknown(part, Resonator.class, "frequency", tolerance, Resonator::retuned));
        }
    }

    private interface Scaling<P extends Part> {
        Part by(P part, double factor);
    }

    private static <P extends Part> Unknown unknown(
            Part part, Class<P> kind, String what, double limit, Scaling<P> scaling) {
        String percent = 100 * limit == Math.rint(100 * limit)
                ? String.format(Locale.ROOT, "%.0f", 100 * limit)
                : String.format(Locale.ROOT, "%.2g", 100 * limit);
        String key = part.name() + (what.isEmpty() ? "" : " " + what);
        return new Unknown(
                key + " ±" + percent + " %",
                part.name(),
                kind,
                List.of(key),
                Bend.EVEN,
                (sofar, u, at) -> scaling.by(kind.cast(sofar), Unknown.even(u[at], limit)));
    }
}
