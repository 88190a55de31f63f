package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.startup.Mode;
import galena.engine.startup.Site;
import galena.engine.startup.Startup;
import org.jspecify.annotations.Nullable;

/**
 * From the operating point to the orbit with amplitude as the guide: at each amplitude of the site's voltage, the extra load (a
 * conductance across the site) that holds it there is found with the orbit. At vanishing amplitude it is the startup's extra
 * conductance; where it falls through zero the circuit holds the amplitude unaided. Load as a function of amplitude is
 * single-valued where amplitude as a function of load folds back, so hard-starting oscillators need nothing special.
 */
final class AmplitudeMarch {
    private static final int INTERVALS = 32;

    /** Where strides this short are all that succeeds, the mesh is at fault: it is doubled, up to {@link #MOST_INTERVALS}. */
    private static final double SHORT_RATIO = 1.02;

    private static final int MOST_INTERVALS = 128;
    private static final double REFINED_RATIO = 1.2;
    private static final int NEWTON_STEPS = 14;
    private static final double FIRST_AMPLITUDE = 0.02;
    private static final double FIRST_RATIO = 2;
    private static final double LARGEST_RATIO = 2.5;
    private static final double SMALLEST_RATIO = 1.002;
    private static final int EASY = 5;
    private static final double LARGEST_AMPLITUDE = 10;
    private static final int MOST_STEPS = 200;

    private final Equations equations;
    private final OperatingPoint.Found point;
    private final Startup startup;
    private final Site site;
    private final OrbitSystem system;
    private final OrbitNewton newton;
    private final Watch watch;
    private final double supply;

    AmplitudeMarch(OperatingPoint.Found point, Startup startup, OrbitSystem system, Watch watch) {
        this.point = point;
        this.equations = point.equations();
        this.startup = startup;
        this.site = startup.site();
        this.system = system;
        this.newton = new OrbitNewton(system);
        system.setLoadRest(point.x()[site.a()] - point.x()[site.b()]);
        this.watch = watch;
        double highest = 0;
        for (int j = 1; j <= equations.nets(); j++) highest = Math.max(highest, Math.abs(point.x()[j]));
        supply = highest;
    }

    /**
     * Where the march ended.
     *
     * @param orbit at which no load is left; null when there is none
     * @param reason why, when there is none
     * @param amplitude the last amplitude reached, V
     * @param load the load there, S
     * @param threshold the amplitude from which on load could be carried, V; zero when from the smallest
     */
    record Arrival(@Nullable Orbit orbit, SteadyState.Reason reason, double amplitude, double load, double threshold) {}

    int iterations() {
        return newton.iterations();
    }

    Arrival run() {
        double amplitude = FIRST_AMPLITUDE;
        Orbit now = small(startup.holding(), amplitude);
        system.plan(now);
        system.setLoad(startup.extraConductance());
        while (!newton.improve(now, Closing.Free.FREQUENCY_AND_LOAD, amplitude, NEWTON_STEPS)) {
            amplitude /= 4;
            if (amplitude < 1e-6) return new Arrival(null, SteadyState.Reason.NO_START, amplitude, system.load(), 0);
            now = small(startup.holding(), amplitude);
            system.setLoad(startup.extraConductance());
        }
        return climb(now, amplitude);
    }

    private Arrival climb(Orbit first, double firstAmplitude) {
        Orbit before = rest(first);
        double amplitudeBefore = 0;
        Orbit now = first;
        double amplitude = firstAmplitude, load = system.load(), ratio = FIRST_RATIO;
        boolean held = load > 0;
        double threshold = 0;
        int intervals = INTERVALS;
        for (int k = 0; k < MOST_STEPS && amplitude < LARGEST_AMPLITUDE * supply + 1; k++) {
            watch.check();
            double next = amplitude * ratio;
            Orbit trial = extrapolated(before, amplitudeBefore, now, amplitude, next);
            system.setLoad(load);
            int iterations = newton.iterations();
            if (!newton.improve(trial, Closing.Free.FREQUENCY_AND_LOAD, next, NEWTON_STEPS)) {
                ratio = Math.sqrt(ratio);
                if (ratio < SHORT_RATIO && intervals < MOST_INTERVALS) {
                    intervals *= 2;
                    double[] finer = Remesh.follow(now, equations, intervals);
                    before = before.onMesh(finer);
                    now = now.onMesh(finer);
                    ratio = REFINED_RATIO;
                } else if (ratio < SMALLEST_RATIO) {
                    return new Arrival(null, stuck(held, amplitude), amplitude, load, threshold);
                }
                continue;
            }
            double loadThere = system.load();
            if (held && loadThere <= 0) {
                Orbit landed = land(now, load, trial, loadThere);
                if (landed != null) return new Arrival(landed, SteadyState.Reason.NONE, next, 0, threshold);
                ratio = Math.sqrt(ratio);
                if (ratio < SMALLEST_RATIO)
                    return new Arrival(null, SteadyState.Reason.MARCH_STUCK, amplitude, load, threshold);
                continue;
            }
            if (!held && loadThere > 0) threshold = next;
            held = loadThere > 0;
            double[] mesh = Remesh.follow(trial, equations, intervals);
            before = now.onMesh(mesh);
            amplitudeBefore = amplitude;
            now = trial.onMesh(mesh);
            amplitude = next;
            load = loadThere;
            if (newton.iterations() - iterations <= EASY) ratio = Math.min(LARGEST_RATIO, ratio * 1.3);
        }
        boolean far = amplitude >= LARGEST_AMPLITUDE * supply + 1;
        SteadyState.Reason reason =
                !held ? SteadyState.Reason.DECAYS : far ? SteadyState.Reason.NO_LIMIT : SteadyState.Reason.MARCH_STUCK;
        return new Arrival(null, reason, amplitude, load, threshold);
    }

    /** Beyond the supply a stage that still needs help only clips harder; stuck there is an answer. */
    private SteadyState.Reason stuck(boolean held, double amplitude) {
        return !held && amplitude > supply ? SteadyState.Reason.DECAYS : SteadyState.Reason.MARCH_STUCK;
    }

    /** Between an amplitude that could carry load and one that could not: the orbit without any. */
    private @Nullable Orbit land(Orbit below, double loadBelow, Orbit above, double loadAbove) {
        double share = loadBelow / (loadBelow - loadAbove);
        Orbit orbit = below.copy();
        for (int p = 0; p < orbit.x.length; p++) orbit.x[p] += share * (above.x[p] - below.x[p]);
        orbit.frequency += share * (above.frequency - below.frequency);
        double low = Closing.condition(below, below.x, site, 1), high = Closing.condition(above, above.x, site, 1);
        system.setLoad(0);
        if (!newton.improve(orbit, Closing.Free.FREQUENCY, 0, NEWTON_STEPS)) return null;
        double landed = Closing.condition(orbit, orbit.x, site, 1);
        double slack = 0.05 * (high - low);
        return landed > low - slack && landed < high + slack ? orbit : null;
    }

    /** The operating point as a motionless orbit. */
    private Orbit rest(Orbit like) {
        Orbit orbit = new Orbit(like.mesh, like.stride, like.frequency);
        for (int p = 0; p < orbit.x.length; p += orbit.stride) {
            System.arraycopy(point.x(), 0, orbit.x, p, orbit.stride);
        }
        return orbit;
    }

    /** The operating point with the mode riding on it, its site voltage a · cos. */
    private Orbit small(Mode mode, double amplitude) {
        Orbit orbit = new Orbit(Orbit.uniformMesh(INTERVALS), equations.stride(), mode.frequency());
        double re = mode.re()[site.a()] - mode.re()[site.b()], im = mode.im()[site.a()] - mode.im()[site.b()];
        double square = re * re + im * im;
        for (int k = 0; k < orbit.intervals(); k++) {
            for (int j = 0; j < Radau.STAGES; j++) {
                double angle = 2 * Math.PI * orbit.phase(k, j), cos = Math.cos(angle), sin = Math.sin(angle);
                // Re(v/(v_a − v_b) e^jθ) · a
                double c = (cos * re + sin * im) / square, s = (sin * re - cos * im) / square;
                int at = orbit.at(k, j);
                for (int u = 1; u < orbit.stride; u++) {
                    orbit.x[at + u] = point.x()[u] + amplitude * (mode.re()[u] * c - mode.im()[u] * s);
                }
            }
        }
        return orbit;
    }

    private static Orbit extrapolated(Orbit before, double from, Orbit now, double at, double to) {
        Orbit orbit = now.copy();
        double share = (to - at) / (at - from);
        for (int p = 0; p < orbit.x.length; p++) orbit.x[p] += share * (now.x[p] - before.x[p]);
        if (from > 0) orbit.frequency += share * (now.frequency - before.frequency);
        return orbit;
    }
}
