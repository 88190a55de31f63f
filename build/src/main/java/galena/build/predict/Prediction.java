package galena.build.predict;

import galena.build.figure.Figure;
import galena.build.modulation.AudioResponse;
import galena.build.modulation.ToneAnswer;
import galena.engine.steady.Floquet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.hipparchus.analysis.interpolation.AkimaSplineInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialSplineFunction;

/**
 * Everything computed from a build at one setting.
 *
 * @param name of the build
 * @param digest of everything that went in
 * @param setting at which it holds
 * @param rest the standing voltages before anything oscillates
 * @param startup whether and how it starts; empty when nothing in it can oscillate
 * @param running the steady oscillation, or why there is none
 * @param modulation the static modulation curve's figures, or why there are none
 * @param judgements against the intent
 * @param notes what a builder should know besides
 */
public record Prediction(
        String name,
        String digest,
        Setting setting,
        Rest rest,
        Optional<StartupFigures> startup,
        Running running,
        Modulation modulation,
        List<Judgement> judgements,
        List<String> notes) {
    public Prediction {
        judgements = List.copyOf(judgements);
        notes = List.copyOf(notes);
    }

    /**
     * The conditions of a prediction.
     *
     * @param temperature °C
     * @param supplyVoltage open circuit, V
     * @param adjustments positions, 0 to 1
     * @param accuracy "certified" or "live"
     */
    public record Setting(
            double temperature, Optional<Double> supplyVoltage, Map<String, Double> adjustments, String accuracy) {}

    /**
     * The operating point.
     *
     * @param method which rung of the ladder held
     * @param voltages by net
     */
    public record Rest(String method, List<Figure> voltages) {
        public Rest {
            voltages = List.copyOf(voltages);
        }
    }

    /**
     * How it starts.
     *
     * @param starts whether a growing oscillation exists with typical parts
     * @param behaviour what its oscillations amount to, in words: only if kicked, squegs, several; empty where one grows to one that
     *     stays
     * @param frequency of the growing oscillation, before limiting
     * @param margin extra loss that it could carry, over the loss it has
     * @param site the coil that extra loss is thought across
     * @param time from one microvolt to the final amplitude, or why not
     * @param lossShares share of each part in the losses, largest first; parts that feed have shares below zero
     * @param weakest what the margin is with the least favourable device
     */
    public record StartupFigures(
            boolean starts,
            String behaviour,
            Figure frequency,
            Figure margin,
            String site,
            Figure time,
            Map<String, Double> lossShares,
            Figure weakest) {}

    /** The oscillation, or why there is none. */
    public sealed interface Running {}

    /**
     * A steady oscillation.
     *
     * @param carrier Hz
     * @param errorFrequency relative error of the solution itself
     * @param errorHarmonics dB, of harmonics above the floor of the accuracy
     * @param stability whether small disturbances die
     * @param multiplier largest Floquet multiplier beside the carrier's own
     * @param spectra by coil: voltage across it and current in it
     * @param supplyCurrent A
     * @param inputPower W drawn from the supply
     * @param powers by part, W, largest first
     * @param batteryHours or why not
     * @param meanVoltages by net, while oscillating: what a meter with a choke reads
     * @param carrierCauses what each tolerance contributes to the carrier's interval, Hz, largest first
     * @param tanks the passive resonances around the operating point
     * @param adjustments how far each adjustment moves the carrier, Hz per percent of travel at this position
     */
    public record Oscillation(
            Figure.Known carrier,
            double errorFrequency,
            double errorHarmonics,
            Floquet.Stability stability,
            double multiplier,
            List<Spectrum> spectra,
            Figure supplyCurrent,
            Figure inputPower,
            Map<String, Double> powers,
            Figure batteryHours,
            List<Figure> meanVoltages,
            List<Cause> carrierCauses,
            List<Tank> tanks,
            List<Adjustment> adjustments)
            implements Running {
        public Oscillation {
            spectra = List.copyOf(spectra);
            meanVoltages = List.copyOf(meanVoltages);
            carrierCauses = List.copyOf(carrierCauses);
            tanks = List.copyOf(tanks);
            adjustments = List.copyOf(adjustments);
        }
    }

    /** Nothing steady; why, in words. */
    public record Silent(String reason) implements Running {}

    /**
     * Harmonics of one quantity.
     *
     * @param part the coil
     * @param quantity "voltage across Lt" or "current in Lt"
     * @param fundamental peak
     * @param harmonics from the second on, dB against the fundamental
     */
    public record Spectrum(String part, String quantity, Figure.Known fundamental, List<Figure> harmonics) {
        public Spectrum {
            harmonics = List.copyOf(harmonics);
        }
    }

    /** A tolerance and what it does to the carrier, Hz either way. */
    public record Cause(String what, double hertz) {}

    /**
     * A resonance of the circuit at rest that does not grow.
     *
     * @param frequency Hz
     * @param q loaded
     * @param part the coil that holds it
     */
    public record Tank(double frequency, double q, String part) {}

    /** An adjustment: position 0 to 1 and Hz per percent of travel. */
    public record Adjustment(String part, double position, double hertzPerPercent) {}

    /** The static modulation curve, or why there is none. */
    public sealed interface Modulation {}

    /**
     * What a slow audio voltage does, with large capacitors held at their charge.
     *
     * @param quantity what is modulated: "current in Lo"
     * @param source the audio source
     * @param curve points of the curve in order of the audio voltage
     * @param level peak audio voltage of the intent or of the source
     * @param positivePeak Emax/Ec − 1 at that level
     * @param negativePeak 1 − Emin/Ec at that level
     * @param distortion total harmonic distortion of the envelope at that level
     * @param carrierShift mean envelope over Ec, less one
     * @param swing incidental frequency deviation at that level, peak, Hz
     * @param deepestClean the depth at which the distortion reaches the limit, with its level; or why not
     * @param cleanLimit that limit
     * @param limits audio for the wanted depth, best bias, and where the carrier stops
     * @param tone what a 1 kHz tone at that level does with the tanks' memory in it, or why that is not known
     * @param response of a small tone
     */
    public record Curve(
            String quantity,
            String source,
            List<Point> curve,
            double level,
            Figure positivePeak,
            Figure negativePeak,
            Figure distortion,
            Figure carrierShift,
            Figure swing,
            Figure deepestClean,
            double cleanLimit,
            StaticLimits limits,
            ToneAnswer tone,
            AudioResponse response)
            implements Modulation {
        public Curve {
            curve = List.copyOf(curve);
        }

        /**
         * The envelope over one cycle of a slow tone at the level, evenly sampled from the tone's rising zero on, through the points
         * as the figures take it; empty when the level lies beyond the curve.
         */
        public List<Double> envelope(int samples) {
            double[] audio = curve.stream().mapToDouble(Point::audio).toArray();
            if (audio.length < 5 || level > Math.min(-audio[0], audio[audio.length - 1]) * (1 + 1e-9)) return List.of();
            PolynomialSplineFunction through = new AkimaSplineInterpolator()
                    .interpolate(
                            audio, curve.stream().mapToDouble(Point::amplitude).toArray());
            return IntStream.range(0, samples)
                    .mapToObj(k -> through.value(level * Math.sin(2 * Math.PI * k / samples)))
                    .toList();
        }
    }

    /** One point: audio voltage (V), carrier amplitude (unit of the quantity), carrier frequency (Hz). */
    public record Point(double audio, double amplitude, double frequency) {}

    /** No modulation curve; why. */
    public record NoCurve(String reason) implements Modulation {}

    /** How a figure stands to the intent. */
    public enum Outcome {
        MEETS("meets"),
        FAILS("does not meet"),
        MAY_FAIL("meets with typical parts, not with all"),
        UNKNOWN("cannot be judged");

        private final String words;

        Outcome(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /**
     * One line of the verdict.
     *
     * @param item of the intent
     * @param wanted in words
     * @param found the figure
     * @param outcome of the comparison
     * @param remark what to do about it, or empty
     */
    public record Judgement(String item, String wanted, Figure found, Outcome outcome, String remark) {}
}
