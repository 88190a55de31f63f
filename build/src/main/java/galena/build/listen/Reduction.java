package galena.build.listen;

import java.util.List;

/**
 * What is taken from a build for listening, once: weights, tables and lines. See {@link ReducedModel} for what is done with it.
 *
 * @param rate samples a second that the weights are for, Hz
 * @param order where the memory stands
 * @param path corners of the audio path
 * @param toAmplitude weights by channel: from full scale to the voltage that modulates the amplitude
 * @param toFrequency weights by channel: to that which modulates the frequency
 * @param curve static amplitude and frequency
 * @param tank corners of the sidebands' response
 * @param inPhase weights from the static amplitude's departure to the envelope in phase with the carrier
 * @param quadrature weights to that in quadrature
 * @param phase that the carrier's phase stands by for a standing departure of the amplitude, rad; quadrature is what comes beyond
 * @param hum lines of the mains
 * @param level peak of the audio source at full scale, V
 * @param carrier Hz
 * @param pathError largest departure of the fitted path, as a share of its largest
 * @param tankError largest departure of the fitted sidebands
 */
record Reduction(
        double rate,
        Order order,
        FilterBank path,
        List<double[]> toAmplitude,
        List<double[]> toFrequency,
        StaticCurve curve,
        FilterBank tank,
        double[] inPhase,
        double[] quadrature,
        double phase,
        List<Hum> hum,
        double level,
        double carrier,
        double pathError,
        double tankError) {

    /** Where what remembers stands to the curve that bends. */
    enum Order {
        /** Audio path, curve, tank: the tank rounds off what the curve bends. */
        SPLIT("audio path before the curve, tank behind it"),
        /** All before the curve: for stages whose bias and tank remember together. */
        BEFORE("all memory before the curve");

        private final String words;

        Order(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /**
     * One line of the mains.
     *
     * @param frequency Hz
     * @param amplitude share of the carrier, complex: {real, imaginary} of Re(z e^(jωt))
     * @param swing Hz, complex
     */
    record Hum(double frequency, double[] amplitude, double[] swing) {
        double depth() {
            return Math.hypot(amplitude[0], amplitude[1]);
        }

        double deviation() {
            return Math.hypot(swing[0], swing[1]);
        }
    }

    /** The same on a supply without ripple. */
    Reduction withoutHum() {
        return new Reduction(
                rate,
                order,
                path,
                toAmplitude,
                toFrequency,
                curve,
                tank,
                inPhase,
                quadrature,
                phase,
                List.of(),
                level,
                carrier,
                pathError,
                tankError);
    }
}
