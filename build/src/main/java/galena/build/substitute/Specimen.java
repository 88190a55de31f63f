package galena.build.substitute;

import galena.build.attempt.Draft;
import galena.build.attempt.Looking;
import galena.build.attempt.Tried;
import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.source.BadInputException;
import galena.engine.part.Bipolar;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** One specimen in a device's place, written into the build by its own parameters, so that only the other parts spread. */
final class Specimen {
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
                + last("collector_grading", m.collectorGrading(), "") + "}";
    }

    private static String quantity(String key, double value, String unit) {
        return last(key, value, unit) + ", ";
    }

    private static String last(String key, double value, String unit) {
        return key + ": " + String.format(Locale.ROOT, "%.6e", value) + (unit.isEmpty() ? "" : " " + unit);
    }

    /** The build with that specimen, drawn over everything else; empty where nothing runs or the parameters are none. */
    Optional<Tried> tried(String text) {
        try {
            Build with = Draft.with(
                    here.build(), Map.of(entry.path() + "." + entry.kind().key(), text));
            return looking.look(with).map(t -> looking.draw(t, Substitute.COPIES));
        } catch (BadInputException beyond) {
            return Optional.empty();
        }
    }

    /** Whether a specimen works: as many copies meet every line as with the part that stands there, one of the few apart. */
    boolean works(String text) {
        double wanted = Math.min(Tried.YIELD, here.standing().yield()) - 1.0 / (2 * Substitute.COPIES);
        return tried(text).filter(t -> t.standing().yield() >= wanted).isPresent();
    }
}
