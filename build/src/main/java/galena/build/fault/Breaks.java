package galena.build.fault;

import galena.engine.circuit.Circuit;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Part;
import galena.engine.part.Preset;
import galena.engine.part.Resistor;
import galena.engine.part.Resonator;
import galena.engine.part.Trimmer;
import java.util.Optional;

/** Broken leads and bridges of two-pin parts. */
final class Breaks {
    /** Across a break, Ω: what a clean board leaks (common practice). */
    static final double LEAKAGE = 1e9;

    /** Across a broken lead, F: its two ends are still neighbours (common practice). */
    private static final double STUMP = 0.2e-12;

    /** A solder bridge and its leads, Ω (common practice). */
    private static final double BRIDGE = 0.1;

    private Breaks() {}

    /** The same part with a lead broken; empty for parts that have no single current path. */
    static Optional<Part> open(Part part) {
        if (part instanceof Resistor r) return Optional.of(new Resistor(r.name(), r.from(), r.to(), LEAKAGE));
        if (part instanceof Capacitor c) return Optional.of(new Capacitor(c.name(), c.from(), c.to(), STUMP));
        if (part instanceof Trimmer t)
            return Optional.of(new Trimmer(t.name(), t.from(), t.to(), STUMP, STUMP, t.position(), 0));
        if (part instanceof Resonator r)
            return Optional.of(new Capacitor(r.name(), r.from(), r.to(), r.shuntCapacitance() + STUMP));
        // the winding stays where it is, its circuit is broken: couplings keep their partner
        if (part instanceof Coil c)
            return Optional.of(new Coil(
                    c.name(),
                    c.from(),
                    c.to(),
                    c.inductance(),
                    LEAKAGE,
                    c.selfCapacitance(),
                    c.temperatureCoefficient()));
        return Optional.empty();
    }

    /** A preset whose wiper has lost its track. */
    static Circuit wiperOpen(Circuit circuit, Preset preset) {
        String loose = preset.name() + ".wiper";
        Preset broken = new Preset(
                preset.name(),
                preset.from(),
                loose,
                preset.to(),
                preset.resistance(),
                preset.position(),
                preset.endResistance());
        return circuit.with(broken).plus(new Resistor(loose + ".break", loose, preset.wiper(), LEAKAGE));
    }

    /** Two nets joined by solder. */
    static Circuit bridged(Circuit circuit, String one, String other) {
        return circuit.plus(new Resistor("bridge(" + one + "," + other + ")", one, other, BRIDGE));
    }

    /** The same part with its value times a factor; empty for parts without one. */
    static Optional<Part> scaled(Part part, double factor) {
        if (part instanceof Resistor r) return Optional.of(r.scaled(factor));
        if (part instanceof Capacitor c) return Optional.of(c.scaled(factor));
        if (part instanceof Preset p) return Optional.of(p.scaled(factor));
        if (part instanceof Coil c) return Optional.of(c.scaled(factor, factor));
        return Optional.empty();
    }
}
