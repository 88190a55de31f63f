package galena.build.predict;

/**
 * What independent tolerances add up to. Each is even within ± its limit, so its variance is a third of the limit's square; the sum
 * is taken as normal and the interval covers 95 %, but never more than all limits at once. Devices add their own two sides.
 */
final class Interval {
    private static final double COVERS_95 = 1.96;

    private double squares;
    private double limits;
    private double below;
    private double above;

    /** A tolerance that moves the figure by ± this much. */
    void add(double limit) {
        squares += limit * limit / 3;
        limits += Math.abs(limit);
    }

    /** A device whose specimens move the figure from the typical one's by these, in either order and of any sign. */
    void addSides(double one, double other) {
        double down = Math.min(0, Math.min(one, other)), up = Math.max(0, Math.max(one, other));
        below += down * down;
        above += up * up;
    }

    double low(double value) {
        return value - Math.hypot(even(), Math.sqrt(below));
    }

    double high(double value) {
        return value + Math.hypot(even(), Math.sqrt(above));
    }

    private double even() {
        return Math.min(COVERS_95 * Math.sqrt(squares), limits);
    }
}
