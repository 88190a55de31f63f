package galena.engine.steady;

/**
 * How exact a steady state must be before it is handed out. The error is measured, not assumed: the orbit is solved again on a
 * mesh of half the width, and the difference is what is printed.
 *
 * @param name how it is called
 * @param frequency largest relative error of the frequency
 * @param harmonicDecibels largest error of a harmonic's level, dB
 * @param floor the level below which a harmonic's error is not looked at, dB below the fundamental
 * @param firstIntervals intervals of the first mesh that follows the solution
 */
public record Accuracy(String name, double frequency, double harmonicDecibels, double floor, int firstIntervals) {
    /** For a published figure: 1e-7, 0.02 dB down to −80 dBc. */
    public static final Accuracy CERTIFIED = new Accuracy("certified", 1e-7, 0.02, 80, 48);

    /** For a page that follows a trimmer: 1e-6, 0.1 dB down to −60 dBc. */
    public static final Accuracy LIVE = new Accuracy("live", 1e-6, 0.1, 60, 24);
}
