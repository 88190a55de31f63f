package galena.engine.steady;

import galena.engine.linear.SingularMatrix;

/**
 * Newton's method on a whole orbit and the extra unknowns. Near the solution the matrix of one step serves the next ones
 * (simplified Newton: they cost a quarter and shrink by as much as the matrix is off); how much is then still lacking is judged by
 * the rate at which they shrink. Far from the solution each junction is linearised at a voltage of its own, which follows the orbit
 * only as far as its exponential allows (bounding junction voltages is common practice), while everything else takes the full
 * step. Steps are measured against each unknown's own swing; one of more than half a swing is
 * shortened to that: beyond, there may be another solution.
 */
final class OrbitNewton {
    /**
     * How thoroughly an orbit is solved.
     *
     * @param settled a step of at most this share of swing is the last
     * @param stillVolts a voltage that moves less than this all along is measured against this, V: where everything is as still (a
     *     device cut off all along), rounding would never settle
     * @param stillAmperes the same of a current, A
     * @param hopeless a first step of more swings than this is not followed
     * @param patience steps after which one that is hardly shorter than the last ends it
     * @param within steps of at most this share of swing are never so ended
     */
    record Manner(
            double settled, double stillVolts, double stillAmperes, double hopeless, int patience, double within) {
        /** Towards an orbit whose figures are used. */
        static Manner to(double settled) {
            return new Manner(settled, 1e-9, 1e-12, Double.POSITIVE_INFINITY, 9, 0);
        }

        /** Of an orbit from which the next is extrapolated. */
        static final Manner PASSING = to(1e-5);

        /** Of an orbit that only shows the way. What hardly moves a junction's current, a millivolt, need not be settled. */
        static final Manner GUIDING = new Manner(0.02, 0.025, 1e-6, 30, 5, 0.5);
    }

    /** At a square law's foot Newton's steps halve and no more: that is no stall. */
    private static final double STALLED = 0.6;

    private static final double LONGEST_STEP = 0.5;
    /** However small the swing, a step of half of this is allowed: an orbit may start flat. */
    private static final double TRUSTED_VOLTS = 0.5;

    private static final double TRUSTED_AMPERES = 1e-2;

    /** Unknowns that hardly move are measured against this share of the largest swing of their kind. */
    private static final double SMALL_SWING = 1e-3;

    /** A step shorter than this may be followed by steps with the same matrix, while each is this much shorter than the last. */
    private static final double NEAR = 0.05;

    private static final double SHRINKS = 0.1;
    private static final int MOST_REPEATED = 3;

    /** Steps with a matrix of another circuit go on while each is so much shorter than the last. */
    private static final double KEPT_SHRINKS = 0.25;

    private static final int MOST_KEPT = 6;
    /** Answers for which a matrix of another circuit is not tried once it has failed. */
    private static final int FORGONE = 15;

    /** Widths of an exponential by which a junction's tangent may be off in the last step: 1e-4 of its current. */
    private static final double TANGENT_SETTLED = 0.01;

    /** What repeated steps still lack, by the rate at which they shrink, as a share of the step that would settle. */
    private static final double REMAINS = 0.01;

    private final OrbitSystem system;
    private final double[] extra = new double[Closing.MOST_FREE];
    private double[] step = {};
    private final Manner manner;
    private final double[] scale;
    private final double[] trusted;
    private double length;
    private int iterations;
    private double lastStep;
    private int forgone;

    /** For orbits on the way to another. */
    OrbitNewton(OrbitSystem system) {
        this(system, Manner.PASSING);
    }

    OrbitNewton(OrbitSystem system, Manner manner) {
        this.system = system;
        this.manner = manner;
        scale = new double[system.equations().stride()];
        trusted = new double[system.equations().stride()];
    }

    /** Iterations since construction. */
    int iterations() {
        return iterations;
    }

    /** The size of the last step taken, as a share of swing. */
    double lastStep() {
        return lastStep;
    }

    /**
     * Improves an orbit in place, and the system's load where that is free.
     *
     * @return true when the steps became small; the orbit is spoilt otherwise
     */
    boolean improve(Orbit orbit, Closing.Free free, double amplitude, int most) {
        return improve(orbit, orbit, free, amplitude, most);
    }

    /** The same from a guess that may put junctions where they can't be: their tangents start where a known orbit has them. */
    boolean improve(Orbit orbit, Orbit known, Closing.Free free, double amplitude, int most) {
        if (step.length != orbit.x.length) step = new double[orbit.x.length];
        system.layTangents(known);
        try {
            return settles(orbit, free, amplitude, most);
        } catch (SingularMatrix | ArithmeticException nothingToDivideBy) {
            return false;
        } finally {
            system.dropTangents();
        }
    }

    /**
     * Improves an orbit with the matrix of the last whole step on the same mesh, which may have been another circuit's, for as long as
     * that shrinks steps fast; then, or where there is none, by whole steps. Where a slow mode makes the closing system nearly singular
     * another circuit's matrix shrinks nothing: after one failure the next answers are not tried with it.
     */
    boolean improveKept(Orbit orbit, Closing.Free free, int most) {
        if (step.length != orbit.x.length) step = new double[orbit.x.length];
        if (forgone > 0) {
            forgone--;
        } else if (system.factored(orbit)) {
            if (settlesKept(orbit, free)) return true;
            forgone = FORGONE;
        }
        return improve(orbit, free, 0, most);
    }

    private boolean settlesKept(Orbit orbit, Closing.Free free) {
        double before = Double.POSITIVE_INFINITY;
        for (int k = 0; k < MOST_KEPT; k++) {
            system.repeatedStep(orbit, free, step, extra);
            double size = measure(orbit, free), rate = size / before;
            if (!(length == 1 && rate < KEPT_SHRINKS)) return false;
            take(orbit, free);
            lastStep = size;
            double lacks = k == 0 ? size : size * rate / (1 - rate);
            if (lacks < REMAINS * manner.settled) return true;
            before = size;
        }
        return false;
    }

    private boolean settles(Orbit orbit, Closing.Free free, double amplitude, int most) {
        double before = Double.POSITIVE_INFINITY;
        for (int k = 0; k < most; k++) {
            iterations++;
            double off = system.leadTangents(orbit);
            system.newtonStep(orbit, free, amplitude, step, extra);
            double size = measure(orbit, free);
            take(orbit, free);
            if (!Double.isFinite(size) || !(orbit.frequency > 0)) return false;
            lastStep = size;
            boolean itself = off < TANGENT_SETTLED;
            if (size < manner.settled && itself) return true;
            if (size < NEAR && itself) {
                system.dropTangents();
                if (!free.load() && repeat(orbit, free, size)) return true;
            }
            boolean stalls = size > manner.within && size > STALLED * before;
            if ((k == 0 && size > manner.hopeless) || (k >= manner.patience && stalls)) return false;
            before = size;
        }
        return false;
    }

    /** The step that a solved orbit still lacks, as a share of swing; the system is left linearised there. */
    double lacking(Orbit orbit, Closing.Free free) {
        step = new double[orbit.x.length];
        system.newtonStep(orbit, free, 0, step, extra);
        return measure(orbit, free);
    }

    /** Steps with the matrix as it is, for as long as they shrink fast; true when they became small. */
    private boolean repeat(Orbit orbit, Closing.Free free, double first) {
        double before = first;
        for (int k = 0; k < MOST_REPEATED; k++) {
            system.repeatedStep(orbit, free, step, extra);
            double size = measure(orbit, free), rate = size / before;
            if (!(rate < SHRINKS)) return false;
            take(orbit, free);
            lastStep = size;
            if (size < manner.settled && rate * size < REMAINS * manner.settled) return true;
            before = size;
        }
        return false;
    }

    /**
     * The size of somebody else's step, as a share of swing.
     *
     * @param orbit where
     * @param change of it
     * @param frequency its change, Hz
     */
    double measured(Orbit orbit, double[] change, double frequency) {
        step = change;
        extra[0] = frequency;
        double size = measure(orbit, Closing.Free.FREQUENCY);
        step = new double[0];
        return size;
    }

    /** How much of the step measured last is to be taken. */
    double trusted() {
        return length;
    }

    /** The step's full size as a share of swing; settles how much of it is to be taken. */
    private double measure(Orbit orbit, Closing.Free free) {
        measureSwings(orbit);
        double size = 0, stretch = 0;
        for (int p = 0; p < step.length; p += orbit.stride) {
            for (int j = 1; j < orbit.stride; j++) {
                double change = Math.abs(step[p + j]);
                size = Math.max(size, change / scale[j]);
                stretch = Math.max(stretch, change / trusted[j]);
            }
        }
        if (free.frequency()) {
            size = Math.max(size, Math.abs(extra[0]) / orbit.frequency);
            stretch = Math.max(stretch, Math.abs(extra[0]) / orbit.frequency);
        }
        length = stretch > LONGEST_STEP ? LONGEST_STEP / stretch : 1;
        return size;
    }

    private void take(Orbit orbit, Closing.Free free) {
        for (int p = 0; p < step.length; p++) orbit.x[p] += length * step[p];
        if (free.frequency()) orbit.frequency += length * extra[0];
        if (free.load()) system.setLoad(system.load() + length * extra[1]);
    }

    private void measureSwings(Orbit orbit) {
        double[] swing = orbit.swings();
        double volts = 0, amperes = 0;
        for (int j = 1; j < swing.length; j++) {
            if (system.equations().isCurrent(j)) amperes = Math.max(amperes, swing[j]);
            else volts = Math.max(volts, swing[j]);
        }
        for (int j = 1; j < swing.length; j++) {
            double largest = system.equations().isCurrent(j) ? amperes : volts;
            double still = system.equations().isCurrent(j) ? manner.stillAmperes : manner.stillVolts;
            scale[j] = Math.max(still, Math.max(swing[j], SMALL_SWING * largest));
            trusted[j] = Math.max(scale[j], system.equations().isCurrent(j) ? TRUSTED_AMPERES : TRUSTED_VOLTS);
        }
    }
}
