package galena.build.modulation;

import galena.build.figure.Figure;
import java.util.List;

/**
 * A carrier modulated by a tone, over one audio period.
 *
 * @param quantity whose envelope it is: "current in La"
 * @param level of the source, peak, V
 * @param audio frequency of the tone, Hz
 * @param way how it was found
 * @param carrier unmodulated peak amplitude, in the unit of the quantity
 * @param positivePeak Emax/Ec − 1, a fraction
 * @param negativePeak 1 − Emin/Ec, along the carrier's own phase
 * @param harmonics of the envelope, the second first, as shares of its fundamental
 * @param distortion all of them together
 * @param carrierShift mean envelope over the unmodulated carrier, less 1
 * @param swing peak deviation of the quantity's frequency, Hz
 * @param oscillatorSwing that of the oscillation itself; what is beside it is made on the way to the output
 * @param troubles what it suffers from
 * @param envelope over the audio period on equally spaced points, from where the source passes its rest upwards
 */
public record Modulated(
        String quantity,
        double level,
        double audio,
        Way way,
        double carrier,
        Figure positivePeak,
        Figure negativePeak,
        List<Figure> harmonics,
        Figure distortion,
        Figure carrierShift,
        Figure swing,
        Figure oscillatorSwing,
        List<Trouble> troubles,
        List<Double> envelope)
        implements ToneAnswer {
    /** How an envelope was found. */
    public enum Way {
        /** As a boundary-value problem in slow time. */
        DIRECTLY("solved for directly"),
        /** In time, audio period after audio period until one repeats the last. */
        IN_TIME("followed in time, because it quits or is cut off sharply in the trough"),
        /** In time, and the last period differs from the one before by more than a hundredth. */
        IN_TIME_UNSETTLED("followed in time and not settled yet");

        private final String words;

        Way(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    public Modulated {
        harmonics = List.copyOf(harmonics);
        troubles = List.copyOf(troubles);
        envelope = List.copyOf(envelope);
    }
}
