package galena.build.readings;

import galena.build.quantity.Unit;
import galena.build.wiring.Bend;
import galena.build.wiring.Unknown;
import galena.build.wiring.Unknowns;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.Jfet;
import galena.engine.part.Part;
import galena.engine.part.Preset;
import galena.engine.part.Resistor;
import galena.engine.part.Resonator;
import galena.engine.part.Trimmer;
import java.util.List;
import java.util.Optional;

/** What is shown of an unknown: the value of its part in the unit that a builder reads. */
final class Showing {
    private Showing() {}

    /**
     * @param unknown with the part as it stands in the base
     * @param k which of its numbers
     */
    static Latent latent(Unknown unknown, Part part, int k, boolean drawn) {
        String key = unknown.keys().get(k);
        if (part instanceof Capacitor c && key.equals(Unknowns.addedKey(c.from(), c.to()))) {
            return new Latent(
                    key,
                    key,
                    Unit.FARAD,
                    part.name(),
                    Optional.of(List.of(c.from(), c.to())),
                    Latent.Kind.ADDED,
                    Bend.EXPONENTIAL);
        }
        if (part instanceof Coupling c && key.startsWith("coupling added")) {
            return new Latent(
                    key,
                    key,
                    Unit.NUMBER,
                    part.name(),
                    Optional.of(List.of(c.first(), c.second())),
                    Latent.Kind.ADDED,
                    Bend.NORMAL);
        }
        boolean device = part instanceof Jfet || part instanceof Bipolar;
        Latent.Kind kind = device ? Latent.Kind.DEVICE : drawn ? Latent.Kind.PART : Latent.Kind.STRAY;
        return new Latent(key, words(part, key, k), unit(part, key), part.name(), Optional.empty(), kind, Bend.EVEN);
    }

    private static String words(Part part, String key, int k) {
        if (part instanceof Jfet) return part.name() + (k == 0 ? " saturation current" : " pinch-off");
        if (part instanceof Trimmer) return part.name() + " at its upper stop";
        if (part instanceof Capacitor c && key.endsWith(" taken"))
            return "stray drawn from " + c.from() + " to " + c.to();
        if (part instanceof Coupling c) return "coupling of " + c.first() + " and " + c.second();
        return key;
    }

    private static Unit unit(Part part, String key) {
        if (part instanceof Resistor || part instanceof Preset) return Unit.OHM;
        if (part instanceof Capacitor || part instanceof Trimmer) return Unit.FARAD;
        if (part instanceof Coil) return key.endsWith(" Q") ? Unit.NUMBER : Unit.HENRY;
        if (part instanceof Resonator) return Unit.HERTZ;
        if (part instanceof Jfet) return key.endsWith("saturation current") ? Unit.AMPERE : Unit.VOLT;
        return Unit.NUMBER;
    }

    /** @param carrier frequency at which a Q is stated, Hz */
    static double value(Latent latent, Part part, double carrier) {
        if (part instanceof Resistor r) return r.resistance();
        if (part instanceof Preset p) return p.resistance();
        if (part instanceof Capacitor c) return c.capacitance();
        if (part instanceof Trimmer t) return t.at(1).capacitance();
        if (part instanceof Coil c)
            return latent.unit() == Unit.HENRY
                    ? c.inductance()
                    : 2 * Math.PI * carrier * c.inductance() / Math.max(1e-12, c.seriesResistance());
        if (part instanceof Coupling k) return k.k();
        if (part instanceof Resonator r)
            return 1 / (2 * Math.PI * Math.sqrt(r.motionalInductance() * r.motionalCapacitance()));
        if (part instanceof Jfet j)
            return latent.unit() == Unit.AMPERE
                    ? j.model().saturationCurrent()
                    : j.model().pinchOff();
        if (part instanceof Bipolar b) return b.model().forwardBeta();
        throw new IllegalStateException(latent.key() + " is shown by nothing");
    }
}
