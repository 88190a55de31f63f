package galena.build.wiring;

import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * How a value in which a circuit is about straight runs along a scale on which it is standard normal before anything is read. The
 * value is in the natural unit of its law: 0 to 1 over a tolerance, means of an exponential law, standard deviations.
 */
public enum Bend {
    /** Evenly within ends: a tolerance. */
    EVEN,
    /** Falling off from nothing: what nobody drew. */
    EXPONENTIAL,
    /** Normal. */
    NORMAL;

    private static final NormalDistribution LAW = new NormalDistribution();
    /** In means of an exponential law: beyond it numbers are as good as values. */
    private static final double FAR = 12;

    private static final double EDGE = 1e-9;

    /** The value at a standard normal number. */
    public double value(double z) {
        return switch (this) {
            case EVEN -> uniform(z);
            case EXPONENTIAL -> -Math.log(uniform(-z));
            case NORMAL -> z;
        };
    }

    /** The standard normal number of a value. */
    public double number(double value) {
        return switch (this) {
            case EVEN -> normal(value);
            case EXPONENTIAL -> -normal(Math.exp(-value));
            case NORMAL -> value;
        };
    }

    /** Its derivative. */
    public double slope(double z) {
        return switch (this) {
            case EVEN -> LAW.density(z);
            case EXPONENTIAL -> LAW.density(z) / uniform(-z);
            case NORMAL -> 1;
        };
    }

    /**
     * The number that is reached by moving straight in the value, as far as its slope at z says: readings then follow their own
     * slopes. Near an end, where that would go past it, straight along the scale.
     *
     * @param by the move along the scale
     */
    public double moved(double z, double by) {
        double now = value(z), there = now + slope(z) * by;
        return switch (this) {
            case EVEN -> there < now / 2 || 1 - there < (1 - now) / 2 ? z + by : normal(there);
            case EXPONENTIAL -> there < now / 2 || there > FAR ? z + by : -normal(Math.exp(-there));
            case NORMAL -> there;
        };
    }

    /** The number of the unit cube at a value; values beyond an end are at the end. */
    double cube(double value) {
        return switch (this) {
            case EVEN -> Math.max(EDGE, Math.min(1 - EDGE, value));
            case EXPONENTIAL -> Math.max(EDGE, Math.min(1 - EDGE, -Math.expm1(-value)));
            case NORMAL -> uniform(value);
        };
    }

    /** Standard normal for a number of the unit cube. */
    public static double normal(double u) {
        return LAW.inverseCumulativeProbability(Math.max(EDGE, Math.min(1 - EDGE, u)));
    }

    /** The number of the unit cube for a standard normal. */
    public static double uniform(double z) {
        return Math.max(EDGE, Math.min(1 - EDGE, LAW.cumulativeProbability(z)));
    }
}
