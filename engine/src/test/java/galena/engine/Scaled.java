package galena.engine;

import galena.engine.circuit.Circuit;
import galena.engine.part.Battery;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Part;
import galena.engine.part.Polarity;
import galena.engine.part.Trimmer;

/** Circuits changed throughout in a way that has a known effect. */
public final class Scaled {
    private Scaled() {}

    /** Every inductance and every charge times k: the same waveforms, k times slower. */
    public static Circuit slower(Circuit circuit, double k) {
        Circuit changed = circuit;
        for (Part part : circuit.parts()) changed = changed.with(slower(part, k));
        return changed;
    }

    private static Part slower(Part part, double k) {
        if (part instanceof Coil c) {
            return new Coil(
                    c.name(),
                    c.from(),
                    c.to(),
                    k * c.inductance(),
                    c.seriesResistance(),
                    k * c.selfCapacitance(),
                    c.temperatureCoefficient());
        }
        if (part instanceof Capacitor c) {
            return new Capacitor(c.name(), c.from(), c.to(), k * c.capacitance(), c.temperatureCoefficient());
        }
        if (part instanceof Trimmer t) {
            return new Trimmer(
                    t.name(),
                    t.from(),
                    t.to(),
                    k * t.minimum(),
                    k * t.maximum(),
                    t.position(),
                    t.temperatureCoefficient());
        }
        if (part instanceof Jfet q) {
            Jfet.Model m = q.model();
            return new Jfet(
                    q.name(),
                    q.polarity(),
                    q.drain(),
                    q.gate(),
                    q.source(),
                    new Jfet.Model(
                            m.saturationCurrent(),
                            m.pinchOff(),
                            m.channelLengthModulation(),
                            slower(m.gateSource(), k),
                            slower(m.gateDrain(), k)));
        }
        if (part instanceof Bipolar q) {
            Bipolar.Model m = q.model();
            return new Bipolar(
                    q.name(),
                    q.polarity(),
                    q.collector(),
                    q.base(),
                    q.emitter(),
                    new Bipolar.Model(
                            m.saturationCurrent(),
                            m.forwardBeta(),
                            m.reverseBeta(),
                            m.earlyVoltage(),
                            k * m.forwardTransitTime(),
                            k * m.reverseTransitTime(),
                            k * m.emitterCapacitance(),
                            m.emitterBuiltIn(),
                            m.emitterGrading(),
                            k * m.collectorCapacitance(),
                            m.collectorBuiltIn(),
                            m.collectorGrading(),
                            m.baseResistance()));
        }
        return part;
    }

    private static Junction slower(Junction j, double k) {
        return new Junction(
                j.saturationCurrent(),
                j.emission(),
                k * j.zeroBiasCapacitance(),
                j.builtIn(),
                j.grading(),
                k * j.transitTime(),
                j.leakage(),
                j.forwardFraction(),
                j.energyGap(),
                j.temperatureExponent());
    }

    /** Every transistor of the other polarity and every battery reversed: the same waveforms upside down. */
    public static Circuit mirrored(Circuit circuit) {
        Circuit changed = circuit;
        for (Part part : circuit.parts()) {
            if (part instanceof Battery b) {
                changed = changed.with(new Battery(b.name(), b.plus(), b.minus(), -b.emf(), b.internalResistance()));
            } else if (part instanceof Jfet q) {
                changed = changed.with(new Jfet(q.name(), Polarity.P, q.drain(), q.gate(), q.source(), q.model()));
            } else if (part instanceof Bipolar q) {
                changed = changed.with(
                        new Bipolar(q.name(), Polarity.P, q.collector(), q.base(), q.emitter(), q.model()));
            }
        }
        return changed;
    }
}
