package galena.build.depth;

import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.engine.circuit.Circuit;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.Part;
import galena.engine.part.Preset;
import galena.engine.part.Resistor;
import galena.engine.part.Trimmer;
import java.util.ArrayList;
import java.util.List;

/**
 * A circuit with one value changed.
 *
 * @param what changes, in words
 * @param way by which swing would come, should the change help
 * @param through the part, stray, coupling or net by which it would come
 * @param circuit with the change
 */
record Change(String what, Way way, String through, Circuit circuit) {
    /** How audio or modulation gets at the carrier's frequency. */
    enum Way {
        COUPLING,
        SUPPLY,
        TUNING
    }

    /** The cause in words. @param pulled whether the oscillation itself swings, or the carrier is turned behind it only */
    String cause(boolean pulled) {
        return switch (way) {
            case COUPLING ->
                pulled
                        ? "what follows pulls the oscillator through " + through
                        : "the carrier gets past its modulator, or is turned behind it, through " + through;
            case SUPPLY -> "the audio moves the supply: " + through;
            case TUNING -> "a tank off the carrier turns depth into swing: " + through;
        };
    }

    /** Share by which values are moved when the response's points are differentiated. */
    static final double STEP = 0.02;

    private static final double STRAY_K = 0.05;
    private static final double COUPLES_UP_TO = 1e-9;
    private static final double FEEDS_UP_TO = 1e3;
    private static final double DECOUPLES_FROM = 4.7e-9;

    /** Every value that a response may hang on, 2 % higher. */
    static List<Change> higher(Circuit circuit) {
        List<Change> all = new ArrayList<>();
        for (Part part : circuit.parts()) {
            double times = 1 + STEP;
            if (isStray(part)) continue;
            if (part instanceof Resistor r) all.add(of(circuit, part, "resistance", r.scaled(times)));
            if (part instanceof Capacitor c) all.add(of(circuit, part, "capacitance", c.scaled(times)));
            if (part instanceof Trimmer t) all.add(of(circuit, part, "capacitance", t.scaled(times)));
            if (part instanceof Preset p) all.add(of(circuit, part, "track", p.scaled(times)));
            if (part instanceof Coil coil) {
                all.add(of(circuit, part, "inductance", coil.scaled(times, times)));
                if (coil.seriesResistance() > 0) all.add(of(circuit, part, "loss", coil.scaled(1, times)));
            }
        }
        return all;
    }

    private static Change of(Circuit circuit, Part part, String value, Part changed) {
        String name = part.name().replaceFirst("\\.resistance$", "");
        return new Change(name + " " + value, Way.TUNING, name, circuit.with(changed));
    }

    /** What might cure swing: less coupling, more decoupling. */
    static List<Change> cures(Circuit circuit) {
        List<Change> all = new ArrayList<>();
        for (Part part : circuit.parts()) {
            if (part instanceof Coupling k && Math.abs(k.k()) < STRAY_K && k.k() != 0) {
                String coils = k.first() + " and " + k.second();
                all.add(new Change(
                        "keep " + coils + " from coupling",
                        Way.COUPLING,
                        "the coupling of " + coils,
                        circuit.with(k.scaled(1e-6))));
            }
            if (part instanceof Capacitor c) capacitor(all, circuit, c);
            if (part instanceof Resistor r
                    && r.resistance() <= FEEDS_UP_TO
                    && decoupled(circuit, r.from())
                    && decoupled(circuit, r.to())) {
                all.add(new Change(
                        r.name() + " from " + value(r.resistance(), Unit.OHM) + " to "
                                + value(2.2 * r.resistance(), Unit.OHM),
                        Way.SUPPLY,
                        "through " + r.name(),
                        circuit.with(r.scaled(2.2))));
            }
        }
        return all;
    }

    private static void capacitor(List<Change> all, Circuit circuit, Capacitor c) {
        boolean stray = isStray(c);
        if (c.capacitance() <= COUPLES_UP_TO && !(stray && grounded(c))) {
            String what = stray
                    ? "halve the stray between " + c.from() + " and " + c.to()
                    : "halve " + c.name() + " to " + value(c.capacitance() / 2, Unit.FARAD);
            String through = stray ? "the stray between " + c.from() + " and " + c.to() : c.name();
            all.add(new Change(what, Way.COUPLING, through, circuit.with(c.scaled(0.5))));
        }
        if (c.capacitance() >= DECOUPLES_FROM && grounded(c)) {
            String net = c.from().equals(Circuit.GROUND) ? c.to() : c.from();
            all.add(new Change(
                    c.name() + " from " + value(c.capacitance(), Unit.FARAD) + " to "
                            + value(10 * c.capacitance(), Unit.FARAD),
                    Way.SUPPLY,
                    "net " + net,
                    circuit.with(c.scaled(10))));
        }
    }

    /** Strays have names of their own that no builder can give: {@code galena.build.wiring.Names}. */
    private static boolean isStray(Part part) {
        return part.name().startsWith("stray") && part.name().contains("(");
    }

    private static boolean grounded(Capacitor c) {
        return c.from().equals(Circuit.GROUND) || c.to().equals(Circuit.GROUND);
    }

    private static boolean decoupled(Circuit circuit, String net) {
        return circuit.parts().stream()
                .anyMatch(p -> p instanceof Capacitor c
                        && c.capacitance() >= DECOUPLES_FROM
                        && grounded(c)
                        && (c.from().equals(net) || c.to().equals(net)));
    }

    private static String value(double value, Unit unit) {
        return Engineering.print(value, unit, 2);
    }
}
