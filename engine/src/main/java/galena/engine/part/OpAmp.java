package galena.engine.part;

import java.util.List;

/**
 * An operational amplifier for audio: one pole, a slew limit, an output that stays off its rails, and an output resistance.
 *
 * <p>Inside, a transconductance that saturates drives the compensation capacitor; what stands across that is the output's
 * open-circuit voltage. With C the capacitor: gm = 2π · gainBandwidth · C, its greatest current slewRate · C, so that the
 * small-signal gain is gain/(1 + jf · gain/gainBandwidth) and the output moves no faster than the slew rate (J. E. Solomon, The
 * monolithic op amp: a tutorial study, IEEE J. Solid-State Circuits SC-9 (1974) 314). C itself appears nowhere outside. The laws
 * are {@link galena.engine.law.AmplifierLaw}'s. Nothing here follows temperature.
 *
 * @param noninverting input
 * @param inverting input
 * @param plus net of the positive rail
 * @param minus net of the negative rail, or ground
 */
public record OpAmp(
        String name, String noninverting, String inverting, String output, String plus, String minus, Model model)
        implements Part {
    public OpAmp {
        Require.named(name);
    }

    /**
     * @param gain open loop at direct current, a ratio
     * @param gainBandwidth Hz at which the open-loop gain has fallen to 1
     * @param slewRate V/s, either direction
     * @param swingLow V above the negative rail that the unloaded output stops at
     * @param swingHigh V below the positive rail
     * @param outputResistance Ω, open loop
     * @param outputCurrent greatest, A, either direction
     * @param supplyCurrent at rest, A
     * @param inputBias into each input, A; below zero where it flows out
     * @param inputResistance between the inputs, Ω
     */
    public record Model(
            double gain,
            double gainBandwidth,
            double slewRate,
            double swingLow,
            double swingHigh,
            double outputResistance,
            double outputCurrent,
            double supplyCurrent,
            double inputBias,
            double inputResistance) {
        private static final double LEAST_GAIN = 10;
        private static final double GREATEST_GAIN = 1e8;
        private static final String NOUN = "op-amp";

        public Model {
            Require.within(NOUN, "gain", gain, LEAST_GAIN, GREATEST_GAIN, "");
            Require.positive(NOUN, "gain-bandwidth", gainBandwidth, "Hz");
            Require.positive(NOUN, "slew rate", slewRate, "V/s");
            Require.notNegative(NOUN, "low swing", swingLow, "V");
            Require.notNegative(NOUN, "high swing", swingHigh, "V");
            Require.positive(NOUN, "output resistance", outputResistance, "Ω");
            Require.positive(NOUN, "output current", outputCurrent, "A");
            Require.notNegative(NOUN, "supply current", supplyCurrent, "A");
            Require.finite(NOUN, "input bias", inputBias, "A");
            Require.positive(NOUN, "input resistance", inputResistance, "Ω");
        }
    }

    @Override
    public List<String> nets() {
        return List.of(noninverting, inverting, output, plus, minus);
    }

    @Override
    public List<String> pins() {
        return List.of("noninverting", "inverting", "output", "plus", "minus");
    }
}
