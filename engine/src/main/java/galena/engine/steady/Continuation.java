package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.linear.SingularMatrix;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Follows an orbit along a parameter of its circuit by arclength in the plane of the parameter and a figure: neither is imposed
 * alone, but the way gone along the curve's secant, so that the curve is followed round folds, where the orbit as a function of the
 * parameter turns back, and down to where the oscillation quits. H. B. Keller, in P. Rabinowitz (ed.), Applications of Bifurcation
 * Theory, Academic Press 1977, p. 359; R. Seydel, Practical Bifurcation and Stability Analysis, 3rd ed., Springer 2010, ch. 4 (from
 * memory). Points are solved on a mesh that follows them, their mesh error is not measured. Immutable.
 */
public final class Continuation {
    private static final double FIRST_STEP = 0.05;
    private static final double LARGEST_STEP = 0.15;
    private static final double SMALLEST_STEP = 1e-5;
    private static final double DIFFERENCE = 1e-5;
    private static final int NEWTON_STEPS = 8;
    private static final int EASY = 4;
    private static final double SETTLED = 1e-6;

    /** One step takes at most this share of a falling figure away: the place where it is zero is crept up to. */
    private static final double SHARE_OF_FIGURE = 0.4;

    /** An amplitude at the site of this share of the start's counts as none. */
    private static final double QUIET = 0.01;

    private final OrbitFigure figure;
    private final double parameterScale;
    private final int most;
    private final Watch watch;

    /**
     * @param figure beside the parameter in the plane of the curve
     * @param parameterScale a change of the parameter that is as long as the figure's value at the start
     * @param most points, 3 or more
     */
    public Continuation(OrbitFigure figure, double parameterScale, int most, Watch watch) {
        if (!(parameterScale > 0) || most < 3) throw new IllegalArgumentException("a curve needs a scale and 3 points");
        this.figure = figure;
        this.parameterScale = parameterScale;
        this.most = most;
        this.watch = watch;
    }

    /**
     * A point of the curve.
     *
     * @param parameter of the circuit
     * @param figure there
     * @param period the orbit
     */
    public record Point(double parameter, double figure, Followed period) {}

    /** Why a curve ends. */
    public enum End {
        /** At the end of the parameter's range. */
        RANGE,
        /** The amplitude goes to zero: the oscillation quits. */
        QUITS,
        /** So many points as were allowed. */
        POINTS,
        /** The orbit could not be followed however short the step. */
        LOST
    }

    /**
     * @param points from the start on
     * @param folds places in {@code points} at which the parameter turns back
     * @param end why the curve ends
     * @param endsAt the parameter there: where the amplitude would be zero, if it quits
     */
    public record Curve(List<Point> points, List<Integer> folds, End end, double endsAt) {
        public Curve {
            points = List.copyOf(points);
            folds = List.copyOf(folds);
        }

        /** The parameter of the first fold, by the parabola through the points about it; empty without one. */
        public Optional<Double> firstFold() {
            if (folds.isEmpty()) return Optional.empty();
            int k = folds.get(0);
            Point a = points.get(k - 1), b = points.get(k), c = points.get(k + 1);
            double x = a.figure - b.figure, z = c.figure - b.figure;
            double u = (a.parameter - b.parameter) / x, w = (c.parameter - b.parameter) / z;
            double bend = (w - u) / (z - x), slope = u - bend * x;
            return Optional.of(b.parameter - slope * slope / (4 * bend));
        }
    }

    /**
     * Follows the curve until the parameter leaves its range, the oscillation quits, or all points are used.
     *
     * @param family the circuit by the parameter
     * @param from the parameter at the start
     * @param to where to go; past a fold the curve also ends when it is back as far on the other side of {@code from}
     * @param start the period there, solved
     */
    public Curve follow(Family family, double from, double to, Followed start) {
        return new Way(family, from, to, start).follow();
    }

    /** The way along one curve. */
    private final class Way {
        private final Family family;
        private final double from;
        private final double to;
        private final OrbitSystem system;
        private final OrbitNewton newton;
        private final double figureScale;
        private final double loud;
        private final List<Point> points = new ArrayList<>();
        private final List<Integer> folds = new ArrayList<>();
        private Orbit now;
        private double parameter;
        /** The secant, of length one in scaled units. */
        private double alongParameter;

        private double alongFigure;
        private double step = FIRST_STEP;
        private int iterations;

        Way(Family family, double from, double to, Followed start) {
            this.family = family;
            this.from = from;
            this.to = to;
            system = new OrbitSystem(start.waveforms().equations(), start.site());
            newton = new OrbitNewton(system);
            now = start.orbit().copy();
            parameter = from;
            figureScale = figure.of(start.waveforms());
            loud = amplitude(now);
            alongParameter = Math.signum(to - from);
            points.add(new Point(from, figureScale, start));
        }

        private double amplitude(Orbit orbit) {
            return Math.abs(Closing.condition(orbit, orbit.x, system.site(), 1));
        }

        Curve follow() {
            if (!(figureScale > 0)) return ended(End.LOST, from);
            while (points.size() < most) {
                watch.check();
                double length = shortened();
                boolean last = reaches(length);
                Trial trial = last ? solve(Math.abs(to - parameter) / parameterScale, true) : solve(length, false);
                if (trial == null) {
                    step = Math.min(step, length) / 2;
                    if (step < SMALLEST_STEP) return ended(End.LOST, parameter);
                    continue;
                }
                take(trial);
                if (last) return ended(End.RANGE, to);
                if (amplitude(now) < QUIET * loud) return ended(End.QUITS, quits());
                if ((parameter - from) * (to - from) < -(to - from) * (to - from)) return ended(End.RANGE, parameter);
                if (iterations <= EASY) step = Math.min(LARGEST_STEP, 1.5 * step);
            }
            return ended(End.POINTS, parameter);
        }

        private Curve ended(End end, double at) {
            return new Curve(points, folds, end, at);
        }

        /** Where the figure falls, a step takes only a share of it away. */
        private double shortened() {
            double left = points.get(points.size() - 1).figure / figureScale;
            return alongFigure < 0 ? Math.min(step, SHARE_OF_FIGURE * left / -alongFigure) : step;
        }

        private boolean reaches(double length) {
            double ahead = parameter + length * alongParameter * parameterScale;
            return (ahead - to) * (to - from) >= 0;
        }

        private record Trial(Orbit orbit, double parameter, double figure) {}

        /**
         * A point so far along the secant.
         *
         * @param exactly whether the parameter itself is to get so far, not the way along the secant
         */
        private @Nullable Trial solve(double length, boolean exactly) {
            double byParameter = exactly ? Math.signum(to - parameter) : alongParameter;
            double byFigure = exactly ? 0 : alongFigure;
            Point start = points.get(points.size() - 1);
            Orbit orbit = now.copy();
            double place = parameter;
            double[] change = new double[orbit.x.length], extra = new double[Closing.MOST_FREE];
            double before = Double.POSITIVE_INFINITY;
            for (int k = 1; k <= NEWTON_STEPS; k++) {
                iterations = k;
                Beside at = new Beside(place);
                system.setEquations(at.here);
                double value = figure.of(new Waveforms(at.here, orbit, 0));
                double gone = byParameter * (place - start.parameter) / parameterScale
                        + byFigure * (value - start.figure) / figureScale;
                Change explicit = ParameterChange.between(orbit, at.below, at.above, at.delta);
                system.setParameter(
                        explicit,
                        new Condition(figure, byFigure / figureScale, byParameter / parameterScale, length - gone));
                try {
                    system.newtonStep(orbit, Closing.Free.FREQUENCY_AND_PARAMETER, 0, change, extra);
                } catch (SingularMatrix | ArithmeticException none) {
                    return null;
                }
                double size = newton.measured(orbit, change, extra[0]);
                size = Math.max(size, Math.abs(extra[1]) / parameterScale);
                if (!Double.isFinite(size) || newton.trusted() < 1 || (k > 2 && size > before / 2)) return null;
                orbit.add(1, change(orbit, change, extra[0]));
                place += extra[1];
                if (size < SETTLED) {
                    return new Trial(orbit, place, figure.of(new Waveforms(at.here, orbit, 0)));
                }
                before = size;
            }
            return null;
        }

        private static Orbit change(Orbit orbit, double[] x, double frequency) {
            Orbit change = new Orbit(orbit.mesh, orbit.stride, frequency);
            System.arraycopy(x, 0, change.x, 0, x.length);
            return change;
        }

        /** The circuit at a parameter and a little to either side. */
        private final class Beside {
            private final Equations below;
            private final Equations here;
            private final Equations above;
            private final double delta = DIFFERENCE * parameterScale;

            Beside(double place) {
                below = family.at(place - delta);
                here = family.at(place);
                above = family.at(place + delta);
            }
        }

        private void take(Trial trial) {
            Point last = points.get(points.size() - 1);
            double dp = (trial.parameter - last.parameter) / parameterScale;
            double df = (trial.figure - last.figure) / figureScale;
            boolean turned = points.size() > 1 && dp * (last.parameter - points.get(points.size() - 2).parameter) < 0;
            if (turned) folds.add(points.size() - 1);
            double length = Math.hypot(dp, df);
            alongParameter = dp / length;
            alongFigure = df / length;
            parameter = trial.parameter;
            now = trial.orbit.onMesh(Remesh.follow(trial.orbit, system.equations(), trial.orbit.intervals()));
            points.add(
                    new Point(parameter, trial.figure, new Followed(system.equations(), trial.orbit, system.site())));
        }

        /** Near its end a softly dying amplitude is a square root of the way left: its square is carried on to zero. */
        private double quits() {
            Point a = points.get(points.size() - 2), b = points.get(points.size() - 1);
            double first = amplitude(a.period.orbit()), second = amplitude(b.period.orbit());
            double x = first * first, y = second * second;
            return b.parameter + (b.parameter - a.parameter) * y / (x - y);
        }
    }
}
