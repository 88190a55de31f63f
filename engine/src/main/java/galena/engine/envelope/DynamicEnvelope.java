package galena.engine.envelope;

import galena.engine.linear.SingularMatrix;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import galena.engine.steady.Waveforms;
import java.util.Optional;

/**
 * A steady oscillation modulated by a slow periodic source, as a boundary-value problem in slow time: one carrier cycle is solved
 * at each of some dozen moments of the slow period, and where each ends, the trigonometric polynomial through all starts must
 * pass. So no time is waited for, however long the memory: 50 Hz beside 10 µF costs what 15 kHz costs. Each cycle is followed
 * in true time, along the characteristic of ∂q/∂τ + f(τ) ∂q/∂θ + i = s(τ), and nothing is neglected in the ratio of the two
 * frequencies. The multi-time form: H. G. Brachtendorf et al., Electrical Engineering 79 (1996) 103; J. Roychowdhury, IEEE Trans.
 * Circuits Syst. I 48 (2001) 578 (both from memory); cycles sampled along it: the idea behind envelope following, closed
 * here over the slow period.
 *
 * <p>Newton's method on all cycles together, from the small-signal answer ({@link Sidebands}); the level is raised in steps where
 * one leap fails. Slow points are doubled until the envelope stays. Immutable. Cancelling: between two cycles.
 */
public final class DynamicEnvelope {
    private static final int FIRST_POINTS = 17;
    private static final int MOST_FIRST_POINTS = 51;
    private static final int MOST_POINTS = 129;
    private static final double SMALLEST_STEP = 0.05;

    /** Where devices change their state within the slow period, the envelope has corners and its error falls slowly: what may be left. */
    private static final double USABLE = 3e-3;

    private final double tolerance;
    private final int firstPoints;
    private final Watch watch;

    /**
     * @param tolerance error aimed at, of a coil's carrier current over the slow period, as a share of its mean: 1e-4 is a
     *     hundredth of a point of depth
     */
    public DynamicEnvelope(double tolerance, Watch watch) {
        this(tolerance, FIRST_POINTS, watch);
    }

    /** @param firstPoints slow points of the first attempt, odd; the answer has about twice as many or more */
    public DynamicEnvelope(double tolerance, int firstPoints, Watch watch) {
        if (!(tolerance > 0)) throw new IllegalArgumentException("a tolerance is above zero, not " + tolerance);
        this.tolerance = tolerance;
        this.firstPoints = firstPoints;
        this.watch = watch;
    }

    /**
     * @param carrier the unmodulated steady state
     * @param source what modulates it
     */
    public EnvelopeAnswer solve(SteadyState.Found carrier, SlowSource source) {
        Sidebands sidebands = new Sidebands(carrier, source.name());
        Layout layout = sidebands.layout();
        double reached = 0;
        for (int points = firstPoints; points <= MOST_FIRST_POINTS; points = 3 * points) {
            SlowGrid grid = new SlowGrid(points, source.frequency());
            CycleNewton newton = new CycleNewton(layout, grid, carrier, source.name(), watch);
            Climb climb = climb(newton, grid, sidebands, source);
            reached = Math.max(reached, climb.share());
            if (climb.share() < 1) continue; // too few points to follow a corner look like an oscillation that quits
            Envelope coarse = new Envelope(layout, grid, climb.cycles(), source, Optional.empty(), newton.iterations());
            return refine(carrier, coarse, sidebands, source);
        }
        return new EnvelopeAnswer.NotFound(EnvelopeAnswer.Reason.QUITS, reached);
    }

    private record Climb(Cycle[] cycles, double share) {}

    /** Raises the level from nothing, each time from where the two levels before point to. */
    private Climb climb(CycleNewton newton, SlowGrid grid, Sidebands sidebands, SlowSource source) {
        Cycle[] before = still(sidebands.cycle(), grid);
        Cycle[] linear = small(sidebands, grid, source), now = before;
        double share = 0, shareBefore = 0, step = 1;
        while (share < 1) {
            double next = Math.min(1, share + step);
            Cycle[] trial = share == 0
                    ? between(now, linear, next)
                    : between(before, now, (next - shareBefore) / (share - shareBefore));
            if (solved(newton, trial, source.withLevel(next * source.level()))) {
                before = now;
                shareBefore = share;
                now = trial;
                share = next;
                step *= 1.5;
            } else {
                step /= 2.5;
                if (step < SMALLEST_STEP) break;
            }
        }
        return new Climb(now, share);
    }

    private static boolean solved(CycleNewton newton, Cycle[] trial, SlowSource source) {
        try {
            return newton.improve(trial, source);
        } catch (SingularMatrix | ArithmeticException nothingToDivideBy) {
            return false;
        }
    }

    private EnvelopeAnswer refine(SteadyState.Found carrier, Envelope first, Sidebands sidebands, SlowSource source) {
        Envelope coarse = first;
        int iterations = first.iterations();
        while (2 * coarse.points() - 1 <= MOST_POINTS) {
            SlowGrid grid = new SlowGrid(2 * coarse.points() - 1, source.frequency());
            CycleNewton newton = new CycleNewton(coarse.layout(), grid, carrier, source.name(), watch);
            Cycle[] finer = coarse.on(grid);
            if (!solved(newton, finer, source)) {
                // what held on few points may have been an oscillation that quits between two of them
                Climb climb = climb(newton, grid, sidebands, source);
                if (climb.share() < 1) return new EnvelopeAnswer.NotFound(EnvelopeAnswer.Reason.QUITS, climb.share());
                finer = climb.cycles();
            }
            iterations += newton.iterations();
            Envelope fine = new Envelope(coarse.layout(), grid, finer, source, Optional.of(coarse), iterations);
            if (fine.error().orElseThrow().amplitude() <= tolerance) return fine;
            coarse = fine;
        }
        boolean usable = coarse.error().filter(e -> e.amplitude() <= USABLE).isPresent();
        return usable ? coarse : new EnvelopeAnswer.NotFound(EnvelopeAnswer.Reason.TOO_SHARP, 1);
    }

    private static Cycle[] still(Cycle cycle, SlowGrid grid) {
        Cycle[] cycles = new Cycle[grid.points];
        for (int i = 0; i < cycles.length; i++) {
            cycles[i] = new Cycle(grid.time(i), cycle.start.clone(), cycle.x.clone(), cycle.frequency);
        }
        return cycles;
    }

    /** The answer to first order in the level. */
    private static Cycle[] small(Sidebands sidebands, SlowGrid grid, SlowSource source) {
        Response response = sidebands.at(source.frequency());
        Cycle[] cycles = still(sidebands.cycle(), grid);
        for (int i = 0; i < cycles.length; i++) {
            // level · sin ωτ = Re(−j level e^(jωτ))
            double angle = 2 * Math.PI * i / grid.points;
            double re = source.level() * Math.sin(angle), im = source.level() * Math.cos(angle);
            add(cycles[i].start, re, response.charges()[0], im, response.charges()[1]);
            add(cycles[i].x, re, response.x()[0], im, response.x()[1]);
            cycles[i].frequency += re * response.cycleFrequency()[0] + im * response.cycleFrequency()[1];
        }
        return cycles;
    }

    private static void add(double[] to, double p, double[] a, double q, double[] b) {
        for (int k = 0; k < to.length; k++) to[k] += p * a[k] + q * b[k];
    }

    private static Cycle[] between(Cycle[] from, Cycle[] to, double share) {
        Cycle[] cycles = new Cycle[from.length];
        for (int i = 0; i < cycles.length; i++) {
            cycles[i] = from[i].copy();
            lead(cycles[i].start, to[i].start, share);
            lead(cycles[i].x, to[i].x, share);
            cycles[i].frequency += share * (to[i].frequency - from[i].frequency);
        }
        return cycles;
    }

    private static void lead(double[] from, double[] to, double share) {
        for (int k = 0; k < from.length; k++) from[k] += share * (to[k] - from[k]);
    }

    static double amplitude(SteadyState.Found carrier) {
        Waveforms waveforms = carrier.waveforms();
        return waveforms.amplitude(carrier.site().a(), carrier.site().b(), 1);
    }
}
