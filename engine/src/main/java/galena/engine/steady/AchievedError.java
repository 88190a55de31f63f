package galena.engine.steady;

/**
 * The difference between an orbit and the same on a mesh of half the width.
 *
 * @param frequency relative
 * @param harmonicDecibels largest change of any net's or branch's harmonic above the floor, dB
 * @param where the net or branch and harmonic with that change
 */
public record AchievedError(double frequency, double harmonicDecibels, String where) {
    boolean meets(Accuracy accuracy) {
        return frequency <= accuracy.frequency() && harmonicDecibels <= accuracy.harmonicDecibels();
    }
}
