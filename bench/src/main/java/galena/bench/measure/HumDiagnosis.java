package galena.bench.measure;

import java.util.Locale;
import java.util.Optional;

/**
 * Where hum comes from, by four yes/no questions and, if it was measured, whether the mains frequency or twice it is the
 * stronger. Common practice of builders; the order in which the answers are weighed is the diagnosis.
 *
 * @param cause most likely
 * @param sentence what speaks for it
 * @param remedy what to try first
 */
public record HumDiagnosis(Cause cause, String sentence, String remedy) {
    /** Answer to a question. */
    public enum Answer {
        YES,
        NO,
        UNKNOWN
    }

    /**
     * The four tests.
     *
     * @param onBattery does it hum on a battery?
     * @param audioShorted does it hum with the audio input shorted?
     * @param worseFarAway is it worse in the far room than beside the sender?
     * @param changesWhenSetTurned does it change when the set is turned, the signal staying as strong?
     */
    public record Answers(Answer onBattery, Answer audioShorted, Answer worseFarAway, Answer changesWhenSetTurned) {}

    /** Causes. */
    public enum Cause {
        SUPPLY_RIPPLE,
        AUDIO_LOOP,
        HOUSE_WIRING,
        INDUCTION_INTO_SENDER,
        INDUCTION_INTO_SET,
        SET_ITSELF,
        ASK_MORE
    }

    /**
     * @param answers of the four tests
     * @param ratio of the line at twice the mains frequency to the line at the mains frequency, if they were measured
     */
    public static HumDiagnosis of(Answers answers, Optional<Double> ratio) {
        String lines = ratio.map(r -> String.format(
                        Locale.ROOT,
                        " The line at %s the mains frequency is the stronger by %.0f dB.",
                        r > 1 ? "twice" : "just",
                        Math.abs(20 * Math.log10(Math.max(1e-6, r)))))
                .orElse("");
        boolean twice = ratio.isPresent() && ratio.get() > 1, once = ratio.isPresent() && ratio.get() <= 1;
        if (answers.audioShorted == Answer.NO) {
            return new HumDiagnosis(
                    Cause.AUDIO_LOOP,
                    "It stops with the audio input shorted: it comes in on the audio lead." + lines,
                    "Feed from a battery-driven player; if that is quiet, isolate the audio with a transformer and earth one end only");
        }
        if (answers.onBattery == Answer.NO) {
            String how = twice
                    ? " Twice the mains frequency is what a full-wave supply leaves."
                    : once
                            ? " The mains frequency itself points to a half-wave supply, or a loop through its earth."
                            : "";
            return new HumDiagnosis(
                    Cause.SUPPLY_RIPPLE,
                    "It stops on a battery: it comes from the supply." + how + lines,
                    "Add a regulator or a larger reservoir, and keep the sender away from the supply's transformer");
        }
        if (answers.worseFarAway == Answer.YES) {
            return new HumDiagnosis(
                    Cause.HOUSE_WIRING,
                    "It is worse far away" + (answers.onBattery == Answer.YES ? ", on a battery too" : "")
                            + ": house wiring picks the carrier up and rectifiers on it send it on with hum." + lines,
                    "Move sender and aerial away from wiring, or couple less to it; a little less power often sounds cleaner. Capacitors across somebody's rectifiers are work for a qualified person");
        }
        if (answers.changesWhenSetTurned == Answer.YES) {
            return new HumDiagnosis(
                    Cause.INDUCTION_INTO_SET,
                    "It changes when the set is turned: a mains field reaches the set, not the sender." + lines,
                    "Move the set away from transformers, lamps and chargers");
        }
        if (answers.onBattery == Answer.YES
                && answers.audioShorted == Answer.YES
                && answers.worseFarAway == Answer.NO) {
            if (answers.changesWhenSetTurned == Answer.NO && twice) {
                return new HumDiagnosis(
                        Cause.SET_ITSELF,
                        "Battery, shorted audio and place make no difference: the set's own supply is suspect." + lines,
                        "Listen to a distant station of the same strength; if it hums too, it is the set");
            }
            return new HumDiagnosis(
                    Cause.INDUCTION_INTO_SENDER,
                    "It stays on a battery with the audio shorted, and near by: a mains field reaches the sender's coils or leads."
                            + lines,
                    "Turn the sender's coil, shorten leads, and move it half a metre from any transformer");
        }
        return new HumDiagnosis(
                Cause.ASK_MORE, "The answers so far fit more than one cause." + lines, nextQuestion(answers));
    }

    private static String nextQuestion(Answers a) {
        if (a.audioShorted == Answer.UNKNOWN) return "Short the audio input at the sender and listen again";
        if (a.onBattery == Answer.UNKNOWN)
            return "Run the sender from a battery, every lead to the mains off, and listen again";
        if (a.worseFarAway == Answer.UNKNOWN) return "Carry a portable set into the far room and compare";
        return "Turn the set in its place and listen for a change";
    }
}
