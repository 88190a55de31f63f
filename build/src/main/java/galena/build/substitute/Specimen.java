package galena.build.substitute;

import galena.build.attempt.Looking;
import galena.build.attempt.Tried;
import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.engine.part.Bipolar;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Mosfet;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** One specimen in a device's place, written into the build by its own parameters, so that only the other parts spread. */
final class Specimen {
    private static final int FEW = 8;

    private final Tried here;
    private final PartEntry entry;
    private final Looking looking;

    Specimen(Tried here, PartEntry entry, Looking looking) {
        this.here = here;
        this.entry = entry;
        this.looking = looking;
    }

    /** The JFET that stands there, with another saturation current (A) and pinch-off (V, below zero). */
    static String text(Jfet.Model m, double saturation, double pinchOff) {
        return "{" + quantity("saturation_current", saturation, "A") + quantity("pinch_off", pinchOff, "V")
                + quantity("channel_length_modulation", m.channelLengthModulation(), "/V")
                + quantity("gate_source_capacitance", m.gateSource().zeroBiasCapacitance(), "F")
                + quantity("gate_drain_capacitance", m.gateDrain().zeroBiasCapacitance(), "F")
                + junction(m.gateSource()) + "}";
    }

    private static String junction(Junction j) {
        return quantity("built_in", j.builtIn(), "V")
                + quantity("grading", j.grading(), "")
                + quantity("gate_saturation_current", j.saturationCurrent(), "A")
                + last("emission", j.emission(), "");
    }

    /** The transistor that stands there, with another current gain. */
    static String text(Bipolar.Model m, double beta) {
        return "{" + quantity("saturation_current", m.saturationCurrent(), "A") + quantity("beta", beta, "")
                + quantity("reverse_beta", m.reverseBeta(), "")
                + (Double.isInfinite(m.earlyVoltage()) ? "" : quantity("early_voltage", m.earlyVoltage(), "V"))
                + quantity("transit_time", m.forwardTransitTime(), "s")
                + quantity("reverse_transit_time", m.reverseTransitTime(), "s")
                + quantity("emitter_capacitance", m.emitterCapacitance(), "F")
                + quantity("emitter_built_in", m.emitterBuiltIn(), "V")
                + quantity("emitter_grading", m.emitterGrading(), "")
                + quantity("collector_capacitance", m.collectorCapacitance(), "F")
                + quantity("collector_built_in", m.collectorBuiltIn(), "V")
                + quantity("collector_grading", m.collectorGrading(), "")
                + last("base_resistance", m.baseResistance(), "Ω") + "}";
    }

    /** The diode that stands there, with another saturation current (A) and emission coefficient. */
    static String text(Junction j, double series, double saturation, double emission) {
        return "{" + quantity("saturation_current", saturation, "A") + quantity("emission", emission, "")
                + quantity("capacitance", j.zeroBiasCapacitance(), "F")
                + quantity("built_in", j.builtIn(), "V")
                + quantity("grading", j.grading(), "")
                + quantity("transit_time", j.transitTime(), "s")
                + quantity("series_resistance", series, "Ω")
                + last("leakage", j.leakage(), "S") + "}";
    }

    /** One channel of a dual-gate MOSFET. */
    static String text(Mosfet.Model m) {
        return "{" + quantity("threshold", m.threshold(), "V") + quantity("square_law", m.beta(), "A/V²")
                + quantity("channel_length_modulation", m.channelLengthModulation(), "/V")
                + quantity("gate_source_capacitance", m.gateSourceCapacitance(), "F")
                + quantity("drain_source_capacitance", m.drainSourceCapacitance(), "F")
                + last("leakage", m.leakage(), "S") + "}";
    }

    private static String quantity(String key, double value, String unit) {
        return last(key, value, unit) + ", ";
    }

    private static String last(String key, double value, String unit) {
        return key + ": " + String.format(Locale.ROOT, "%.6e", value) + (unit.isEmpty() ? "" : " " + unit);
    }

    /**
     * Whether a specimen works: typical parts keep what they keep now, and as many copies over everything else meet every line. Copies are
     * drawn a few at a time until too many have failed.
     */
    boolean works(String text) {
        Optional<Build> build = Candidates.with(here.build(), Map.of(Candidates.key(entry), text));
        Optional<Tried> look = build.flatMap(b -> looking.look(b, here.running()));
        if (look.isEmpty()) return false;
        Tried now = look.get();
        double wanted = Math.min(Tried.YIELD, here.standing().yield()) - 1.0 / (2 * Substitute.COPIES);
        double allowed = (1 - wanted) * Substitute.COPIES;
        for (int count = FEW; count <= Substitute.COPIES; count += FEW) {
            now = looking.draw(now, count);
            if ((1 - now.standing().yield()) * count > allowed) return false;
        }
        return true;
    }
}
