package galena.build.guard;

import galena.engine.circuit.Circuit;
import galena.engine.part.Battery;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Part;
import galena.engine.part.Preset;
import galena.engine.part.Resistor;
import galena.engine.part.Trimmer;
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
    Part at(double times) {
        return factor.apply(times);
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
            all.add(new Scaled(
                    name,
                    s -> new Resistor(name, r.from(), r.to(), r.resistance() * s, r.temperatureCoefficient()),
                    r.temperatureCoefficient()));
        } else if (part instanceof Capacitor c) {
            all.add(new Scaled(
                    name,
                    s -> new Capacitor(name, c.from(), c.to(), c.capacitance() * s, c.temperatureCoefficient()),
                    c.temperatureCoefficient()));
        } else if (part instanceof Trimmer t) {
            all.add(new Scaled(
                    name,
                    s -> new Trimmer(
                            name,
                            t.from(),
                            t.to(),
                            t.minimum() * s,
                            t.maximum() * s,
                            t.position(),
                            t.temperatureCoefficient()),
                    t.temperatureCoefficient()));
        } else if (part instanceof Preset p) {
            all.add(new Scaled(
                    name + " track",
                    s -> new Preset(
                            name, p.from(), p.wiper(), p.to(), p.resistance() * s, p.position(), p.endResistance() * s),
                    0));
        } else if (part instanceof Coil coil) {
            all.add(new Scaled(name + " inductance", s -> coil(coil, s, s), coil.temperatureCoefficient()));
            if (coil.seriesResistance() > 0) all.add(new Scaled(name + " loss", s -> coil(coil, 1, s), 0));
        } else if (part instanceof Battery b) {
            all.add(new Scaled(
                    name + " voltage",
                    s -> new Battery(name, b.plus(), b.minus(), b.emf() * s, b.internalResistance()),
                    0));
        } else if (part instanceof Jfet q) {
            jfet(all, q);
        } else if (part instanceof Bipolar q) {
            bipolar(all, q);
        }
    }

    static Coil coil(Coil coil, double inductance, double resistance) {
        return new Coil(
                coil.name(),
                coil.from(),
                coil.to(),
                coil.inductance() * inductance,
                coil.seriesResistance() * resistance,
                coil.selfCapacitance(),
                coil.temperatureCoefficient());
    }

    private static void jfet(List<Scaled> all, Jfet q) {
        Jfet.Model m = q.model();
        all.add(device(
                q,
                "saturation current",
                s -> new Jfet.Model(
                        m.saturationCurrent() * s,
                        m.pinchOff(),
                        m.channelLengthModulation(),
                        m.gateSource(),
                        m.gateDrain())));
        all.add(device(
                q,
                "pinch-off",
                s -> new Jfet.Model(
                        m.saturationCurrent(),
                        m.pinchOff() * s,
                        m.channelLengthModulation(),
                        m.gateSource(),
                        m.gateDrain())));
        all.add(device(
                q,
                "gate-source capacitance",
                s -> new Jfet.Model(
                        m.saturationCurrent(),
                        m.pinchOff(),
                        m.channelLengthModulation(),
                        capacitance(m.gateSource(), s),
                        m.gateDrain())));
        all.add(device(
                q,
                "gate-drain capacitance",
                s -> new Jfet.Model(
                        m.saturationCurrent(),
                        m.pinchOff(),
                        m.channelLengthModulation(),
                        m.gateSource(),
                        capacitance(m.gateDrain(), s))));
    }

    private static Scaled device(Jfet q, String what, DoubleFunction<Jfet.Model> model) {
        return new Scaled(
                q.name() + " " + what,
                s -> new Jfet(q.name(), q.polarity(), q.drain(), q.gate(), q.source(), model.apply(s)),
                0);
    }

    private static Junction capacitance(Junction j, double s) {
        return new Junction(
                j.saturationCurrent(),
                j.emission(),
                j.zeroBiasCapacitance() * s,
                j.builtIn(),
                j.grading(),
                j.transitTime(),
                j.leakage(),
                j.forwardFraction(),
                j.energyGap(),
                j.temperatureExponent());
    }

    private static void bipolar(List<Scaled> all, Bipolar q) {
        all.add(device(q, "gain", s -> model(q.model(), s, 1, 1)));
        all.add(device(q, "collector capacitance", s -> model(q.model(), 1, s, 1)));
        all.add(device(q, "transit time", s -> model(q.model(), 1, 1, s)));
    }

    private static Scaled device(Bipolar q, String what, DoubleFunction<Bipolar.Model> model) {
        return new Scaled(
                q.name() + " " + what,
                s -> new Bipolar(q.name(), q.polarity(), q.collector(), q.base(), q.emitter(), model.apply(s)),
                0);
    }

    private static Bipolar.Model model(Bipolar.Model m, double beta, double collector, double transit) {
        return new Bipolar.Model(
                m.saturationCurrent(),
                m.forwardBeta() * beta,
                m.reverseBeta(),
                m.earlyVoltage(),
                m.forwardTransitTime() * transit,
                m.reverseTransitTime(),
                m.emitterCapacitance(),
                m.emitterBuiltIn(),
                m.emitterGrading(),
                m.collectorCapacitance() * collector,
                m.collectorBuiltIn(),
                m.collectorGrading(),
                m.baseResistance());
    }
}
