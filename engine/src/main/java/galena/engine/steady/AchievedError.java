package galena.engine.steady;

/**
 * The difference between an orbit and the same on a mesh of twice the width, printed as its error with some room, although
 * the method's order would allow to print a fraction of it, because kinks of square laws between mesh points make it irregular.
 *
 * @param frequency relative
 * @param harmonicDecibels largest change of any net's or branch's harmonic above the floor, dB
 * @param where the net or branch and harmonic with that change
 * @param powerImbalance mean power missing on the finer mesh, as a share of what is delivered
 */
public record AchievedError(double frequency, double harmonicDecibels, String where, double powerImbalance) {
    /** By how much the worst of the three is too large, as a ratio to what is allowed; up to 1 is good. */
    double excess(Accuracy accuracy) {
        double worst = Math.max(frequency / accuracy.frequency(), harmonicDecibels / accuracy.harmonicDecibels());
        return Math.max(worst, powerImbalance / accuracy.powerImbalance());
    }

    boolean meets(Accuracy accuracy) {
        return excess(accuracy) <= 1;
    }
}
