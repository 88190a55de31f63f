package galena.engine.part;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** A MOSFET with its bulk at the source; see {@link Model}. */
public record Mosfet(String name, Polarity polarity, String drain, String gate, String source, Model model)
        implements Part {
    public Mosfet {
        Require.named(name);
    }

    /**
     * The square law of {@link Jfet.Model} with a threshold in place of the pinch-off and fixed gate capacitances. β ∝ T^−1.5,
     * threshold −2 mV/K.
     *
     * @param threshold volts for an n-channel device; below zero for depletion types
     * @param beta A/V²: saturation current is β (v_gs − threshold)²
     * @param channelLengthModulation per volt
     * @param gateSourceCapacitance farads
     * @param gateDrainCapacitance farads
     * @param drainSourceCapacitance farads
     * @param leakage channel leakage, siemens: a property of the device
     * @param body the body diode, source to drain; null where there is none
     */
    public record Model(
            double threshold,
            double beta,
            double channelLengthModulation,
            double gateSourceCapacitance,
            double gateDrainCapacitance,
            double drainSourceCapacitance,
            double leakage,
            @Nullable Junction body) {
        public Model {
            Require.within("MOSFET", "threshold", threshold, -20, 20, "V");
            Require.positive("MOSFET", "beta", beta, "A/V²");
            Require.within("MOSFET", "channel-length modulation", channelLengthModulation, 0, 0.5, "1/V");
            Require.notNegative("MOSFET", "gate-source capacitance", gateSourceCapacitance, "F");
            Require.notNegative("MOSFET", "gate-drain capacitance", gateDrainCapacitance, "F");
            Require.notNegative("MOSFET", "drain-source capacitance", drainSourceCapacitance, "F");
            Require.positive("MOSFET", "leakage", leakage, "S");
        }
    }

    @Override
    public List<String> nets() {
        return List.of(drain, gate, source);
    }

    @Override
    public List<String> pins() {
        return List.of("drain", "gate", "source");
    }
}
