package galena.build.guard;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.part.Battery;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.Diode;
import galena.engine.part.DualGateMosfet;
import galena.engine.part.Jfet;
import galena.engine.part.Mosfet;
import galena.engine.part.OpAmp;
import galena.engine.part.Part;
import galena.engine.part.Preset;
import galena.engine.part.Resistor;
import galena.engine.part.Resonator;
import galena.engine.part.Trimmer;
import galena.engine.steady.OrbitAdjoint;
import galena.engine.steady.OrbitAdjoint.Parameter;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;

/**
 * One value of one part, as a function of a factor on it.
 *
 * @param value "Lt inductance", "Q1 saturation current"
 * @param factor the part with the value times a factor
 * @param temperatureCoefficient of the value where the part states one, per kelvin
 */
record Scaled(String value, DoubleFunction<Part> factor, double temperatureCoefficient) {
    private static final double STEP = 1e-4;

    Part at(double times) {
        return factor.apply(times);
    }

    /** How the factor enters a circuit; not at all where the part's place is taken by another kind, as by a held voltage. */
    Parameter on(OrbitAdjoint adjoint) {
        Circuit circuit = adjoint.equations().circuit();
        Part below = at(1 - STEP), above = at(1 + STEP);
        if (!circuit.part(below.name())
                .map(p -> p.getClass() == below.getClass())
                .orElse(false)) {
            return adjoint.nothing();
        }
        return adjoint.between(Equations.of(circuit.with(below)), Equations.of(circuit.with(above)), STEP);
    }

    /** Every value of every part, device parameters included. */
    static List<Scaled> all(Circuit circuit) {
        List<Scaled> all = new ArrayList<>();
        for (Part part : circuit.parts()) addTo(all, part);
        return all;
    }

    private static void addTo(List<Scaled> all, Part part) {
        String name = part.name();
        if (part instanceof Resistor r) {
            all.add(new Scaled(name + " resistance", r::scaled, r.temperatureCoefficient()));
        } else if (part instanceof Capacitor c) {
            all.add(new Scaled(name + " capacitance", c::scaled, c.temperatureCoefficient()));
        } else if (part instanceof Trimmer t) {
            all.add(new Scaled(name + " capacitance", t::scaled, t.temperatureCoefficient()));
        } else if (part instanceof Preset p) {
            all.add(new Scaled(name + " track", p::scaled, 0));
        } else if (part instanceof Coil coil) {
            all.add(new Scaled(name + " inductance", s -> coil.scaled(s, s), coil.temperatureCoefficient()));
            if (coil.seriesResistance() > 0) all.add(new Scaled(name + " loss", s -> coil.scaled(1, s), 0));
        } else if (part instanceof Coupling k) {
            if (k.k() != 0) all.add(new Scaled(name, k::scaled, 0));
        } else if (part instanceof Resonator r) {
            all.add(new Scaled(name + " frequency", r::retuned, 0));
        } else if (part instanceof Battery b) {
            all.add(new Scaled(
                    name + " voltage",
                    s -> new Battery(name, b.plus(), b.minus(), b.emf() * s, b.internalResistance()),
                    0));
            if (b.internalResistance() > 0) {
                all.add(new Scaled(
                        name + " resistance",
                        s -> new Battery(name, b.plus(), b.minus(), b.emf(), b.internalResistance() * s),
                        0));
            }
        } else if (part instanceof Diode
                || part instanceof Bipolar
                || part instanceof Jfet
                || part instanceof Mosfet
                || part instanceof DualGateMosfet
                || part instanceof OpAmp) {
            all.addAll(DeviceParameters.of(part));
        }
    }
}
