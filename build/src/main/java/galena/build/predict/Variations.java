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
    private static final double STEP = 1e-4;
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
            two(
                    "",
                    tolerance,
                    scale -> new Resistor(
                            r.name(), r.from(), r.to(), r.resistance() * scale, r.temperatureCoefficient()),
                    part);
        } else if (part instanceof Preset p && tolerance > 0) {
            two(
                    "track",
                    tolerance,
                    s -> new Preset(
                            p.name(),
                            p.from(),
                            p.wiper(),
                            p.to(),
                            p.resistance() * s,
                            p.position(),
                            p.endResistance() * s),
                    part);
        } else if (part instanceof Capacitor c) {
            boolean stray = tolerance == 0;
            two(
                    stray ? "taken" : "",
                    stray ? STRAY_KNOWN_TO : tolerance,
                    s -> new Capacitor(c.name(), c.from(), c.to(), c.capacitance() * s, c.temperatureCoefficient()),
                    part);
        } else if (part instanceof Trimmer t && tolerance > 0) {
            two("", tolerance, s -> scaled(t, s), part);
        } else if (part instanceof Coil coil && tolerance > 0) {
            two("inductance", tolerance, s -> scaled(coil, s, s), part);
            if (coil.seriesResistance() > 0) two("Q", Q_KNOWN_TO, s -> scaled(coil, 1, s), part);
        } else if (part instanceof Coupling k && k.k() != 0) {
            two("taken", COUPLING_KNOWN_TO, s -> new Coupling(k.name(), k.first(), k.second(), k.k() * s), part);
        } else if (part instanceof Resonator r && tolerance > 0) {
            two("frequency", tolerance, s -> scaled(r, s), part);
        }
    }

    private static Trimmer scaled(Trimmer t, double s) {
        return new Trimmer(
                t.name(), t.from(), t.to(), t.minimum() * s, t.maximum() * s, t.position(), t.temperatureCoefficient());
    }

    private static Coil scaled(Coil coil, double inductance, double resistance) {
        return new Coil(
                coil.name(),
                coil.from(),
                coil.to(),
                coil.inductance() * inductance,
                coil.seriesResistance() * resistance,
                coil.selfCapacitance(),
                coil.temperatureCoefficient());
    }

    /** The motional inductance carries the frequency's tolerance: half its own. */
    private static Resonator scaled(Resonator r, double frequency) {
        return new Resonator(
                r.name(),
                r.from(),
                r.to(),
                r.motionalInductance() / (frequency * frequency),
                r.motionalCapacitance(),
                r.motionalResistance(),
                r.shuntCapacitance());
    }

    private interface Scaling {
        Part at(double scale);
    }

    private void two(String what, double limit, Scaling scaling, Part part) {
        if (limit >= 1) return;
        String name = part.name()
                + (what.isEmpty() ? "" : " " + what)
                + String.format(Locale.ROOT, " ±%s %%", number(100 * limit));
        found.add(Variation.of(name, circuit, scaling.at(1 - STEP), scaling.at(1 + STEP), STEP, limit));
    }

    private static String number(double percent) {
        return percent == Math.rint(percent)
                ? String.format(Locale.ROOT, "%.0f", percent)
                : String.format(Locale.ROOT, "%.2g", percent);
    }
}
