package galena.engine.steady;

/**
 * How exact a steady state must be before it is handed out. The error is measured, not assumed: the orbit is solved again on a
 * mesh of half the width, and the difference is what is printed.
 *
 * @param name how it is called
 * @param frequency largest relative error of the frequency
 * @param harmonicDecibels largest error of a harmonic's level, dB
 * @param floor the level below which a harmonic's error is not looked at, dB below the fundamental
 * @param powerImbalance largest mean power that may be missing, as a share of the supply's: what a ringing too fast for the mesh
 *     swallows shows here before it shows in a figure
 * @param settled a Newton step of at most this share of swing is the last: the next would be about its square
 * @param firstIntervals intervals of the first mesh that follows the solution
 */
public record Accuracy(
        String name,
        double frequency,
        double harmonicDecibels,
        double floor,
        double powerImbalance,
        double settled,
        int firstIntervals) {
    /** For a published figure: 1e-7, 0.02 dB down to −80 dBc. */
    public static final Accuracy CERTIFIED = new Accuracy("certified", 1e-7, 0.02, 80, 1e-5, 1e-6, 48);

    /** For a page that follows a trimmer: 1e-6, 0.1 dB down to −60 dBc. */
    public static final Accuracy LIVE = new Accuracy("live", 1e-6, 0.1, 60, 1e-3, 3e-5, 36);
}
