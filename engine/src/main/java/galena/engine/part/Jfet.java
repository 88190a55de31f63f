package galena.engine.part;

import java.util.List;

/** A junction field-effect transistor, symmetric in drain and source; see {@link Model}. */
public record Jfet(String name, Polarity polarity, String drain, String gate, String source, Model model)
        implements Part {
    public Jfet {
        Require.named(name);
    }

    /**
     * Square law. With u = v_gs − pinch-off (n-channel, v_ds above zero): nothing for u below zero; above,
     * I_DSS/V_P² · v_ds (2u − v_ds)(1 + λ v_ds) up to v_ds = u and I_DSS/V_P² · u² (1 + λ v_ds) beyond. For v_ds below zero,
     * drain and source change places. Both gate junctions are present. Temperature: I_DSS/V_P² ∝ T^−2, pinch-off moves by
     * −2.2 mV/K, which puts the current's zero-temperature point near v_gs − V_P = 0.66 V (common practice: 0.6 to 0.8 V).
     *
     * @param saturationCurrent I_DSS, amperes
     * @param pinchOff V_P, volts; below zero for either polarity, as the sheet of an n-channel device prints it
     * @param channelLengthModulation λ, per volt
     * @param gateSource the gate-source junction
     * @param gateDrain the gate-drain junction
     */
    public record Model(
            double saturationCurrent,
            double pinchOff,
            double channelLengthModulation,
            Junction gateSource,
            Junction gateDrain) {
        public Model {
            Require.positive("JFET", "saturation current", saturationCurrent, "A");
            Require.within("JFET", "pinch-off", pinchOff, -50, -0.05, "V");
            Require.within("JFET", "channel-length modulation", channelLengthModulation, 0, 0.5, "1/V");
        }

        /** I_DSS/V_P², A/V². */
        public double beta() {
            return saturationCurrent / (pinchOff * pinchOff);
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
