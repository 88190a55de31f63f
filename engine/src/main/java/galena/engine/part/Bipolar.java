package galena.engine.part;

import java.util.List;

/** A bipolar transistor in the transport form; see {@link Model}. */
public record Bipolar(String name, Polarity polarity, String collector, String base, String emitter, Model model)
        implements Part {
    public Bipolar {
        Require.named(name);
    }

    /**
     * Transport current I_S (exp(v_be/V_T) − exp(v_bc/V_T)) (1 − v_bc/V_A), base currents by the betas of the two junctions,
     * charges by transit times and depletion laws as in {@link Junction}. Beta follows (T/T₀)^1.5.
     *
     * @param saturationCurrent I_S, amperes at 25 °C
     * @param forwardBeta above zero
     * @param reverseBeta above zero
     * @param earlyVoltage V_A, volts; infinite for none
     * @param forwardTransitTime seconds
     * @param reverseTransitTime seconds
     * @param emitterCapacitance base-emitter zero-bias depletion capacitance, farads
     * @param emitterBuiltIn volts
     * @param emitterGrading m of the base-emitter junction
     * @param collectorCapacitance base-collector zero-bias depletion capacitance, farads
     * @param collectorBuiltIn volts
     * @param collectorGrading m of the base-collector junction
     * @param baseResistance ohms; zero for none
     */
    public record Model(
            double saturationCurrent,
            double forwardBeta,
            double reverseBeta,
            double earlyVoltage,
            double forwardTransitTime,
            double reverseTransitTime,
            double emitterCapacitance,
            double emitterBuiltIn,
            double emitterGrading,
            double collectorCapacitance,
            double collectorBuiltIn,
            double collectorGrading,
            double baseResistance) {
        public Model {
            Require.positive("bipolar", "forward beta", forwardBeta, "");
            Require.positive("bipolar", "reverse beta", reverseBeta, "");
            if (!(earlyVoltage > 1))
                throw new IllegalArgumentException("bipolar: Early voltage " + earlyVoltage + " V must be above 1 V");
            Require.notNegative("bipolar", "base resistance", baseResistance, "Ω");
        }

        /** The same with another forward beta. */
        public Model withForwardBeta(double beta) {
            return new Model(
                    saturationCurrent,
                    beta,
                    reverseBeta,
                    earlyVoltage,
                    forwardTransitTime,
                    reverseTransitTime,
                    emitterCapacitance,
                    emitterBuiltIn,
                    emitterGrading,
                    collectorCapacitance,
                    collectorBuiltIn,
                    collectorGrading,
                    baseResistance);
        }

        /** The base-emitter junction: the base's share of the current, the whole forward diffusion charge. */
        public Junction emitterJunction() {
            return Junction.silicon(
                    saturationCurrent, 1, emitterCapacitance, emitterBuiltIn, emitterGrading, forwardTransitTime);
        }

        /** The base-collector junction. */
        public Junction collectorJunction() {
            return Junction.silicon(
                    saturationCurrent, 1, collectorCapacitance, collectorBuiltIn, collectorGrading, reverseTransitTime);
        }
    }

    @Override
    public List<String> nets() {
        return List.of(collector, base, emitter);
    }

    @Override
    public List<String> pins() {
        return List.of("collector", "base", "emitter");
    }
}
