package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.part.Bipolar;
import galena.engine.part.Diode;
import galena.engine.part.DualGateMosfet;
import galena.engine.part.Jfet;
import galena.engine.part.Mosfet;
import galena.engine.startup.Mode;
import galena.engine.startup.Site;
import galena.engine.startup.Startup;
import org.jspecify.annotations.Nullable;

/**
 * From the operating point to the orbit with amplitude as the guide: at each amplitude of the site's voltage, the extra load (a
 * conductance across the site) that holds it there is found with the orbit. At vanishing amplitude it is the startup's extra
 * conductance; where it falls through zero the circuit holds the amplitude unaided. Load as a function of amplitude is
 * single-valued where amplitude as a function of load folds back, so hard-starting oscillators need nothing special. Where a stage is
 * driven so hard that amplitude itself turns back, the way along the curve in the plane of both is imposed instead. Working state: one
 * march for one question.
 */
final class AmplitudeMarch {
    private static final int INTERVALS = 32;

    /** Where strides this short are all that succeeds, the mesh is at fault: it is doubled, up to {@link #MOST_INTERVALS}. */
    private static final double SHORT_RATIO = 1.02;

    private static final int MOST_INTERVALS = 128;
    private static final double REFINED_RATIO = 1.2;
    private static final int NEWTON_STEPS = 25;
    private static final double FIRST_AMPLITUDE = 0.02;
    private static final double SMALLEST_AMPLITUDE = 1e-6;
    private static final double FIRST_RATIO = 2;
    private static final double LARGEST_RATIO = 2.5;
    private static final double SMALLEST_RATIO = 1.002;
    private static final int EASY = 5;
    /** Share of its size by which a load may miss what was foreseen before a careful march shortens its stride, down to this ratio. */
    private static final double MOST_BEND = 0.2;

    private static final double BENT_RATIO = 1.05;
    private static final double LARGEST_AMPLITUDE = 10;
    private static final int MOST_STEPS = 200;

    /** Steps along the curve in the plane of amplitude and load, each against its own size. */
    private static final double FIRST_LENGTH = 0.003;

    private static final double LARGEST_LENGTH = 0.1;
    private static final double SMALLEST_LENGTH = 1e-5;

    private final Equations equations;
    private final OperatingPoint.Found point;
    private final Startup startup;
    private final Site site;
    private final OrbitSystem system;
    private final OrbitNewton newton;
    private final Watch watch;
    private final double supply;
    private final double largestRatio;
    private final boolean careful;
    private final int[] deviceNets;
    private Station earlier;
    private Station before;
    private Station now;
    private double ratio;
    private int steps;
    private int intervals = INTERVALS;
    /** Whether steps go along the curve, because amplitude itself turns back. */
    private boolean slanted;

    private double length = FIRST_LENGTH;

    AmplitudeMarch(OperatingPoint.Found point, Startup startup, OrbitSystem system, Watch watch) {
        this(point, startup, system, watch, LARGEST_RATIO, false);
    }

    /** A march on which nothing may be missed. @param largestRatio of an amplitude to the one before */
    static AmplitudeMarch careful(
            OperatingPoint.Found point, Startup startup, OrbitSystem system, Watch watch, double largestRatio) {
        return new AmplitudeMarch(point, startup, system, watch, largestRatio, true);
    }

    private AmplitudeMarch(
            OperatingPoint.Found point,
            Startup startup,
            OrbitSystem system,
            Watch watch,
            double largestRatio,
            boolean careful) {
        this.point = point;
        this.equations = point.equations();
        this.startup = startup;
        this.site = startup.site();
        this.system = system;
        this.newton = new OrbitNewton(system, careful ? OrbitNewton.Manner.PASSING : OrbitNewton.Manner.GUIDING);
        system.setLoadRest(point.x()[site.a()] - point.x()[site.b()]);
        this.watch = watch;
        double highest = 0;
        for (int j = 1; j <= equations.nets(); j++) highest = Math.max(highest, Math.abs(point.x()[j]));
        supply = highest;
        this.largestRatio = largestRatio;
        this.careful = careful;
        deviceNets = deviceNets(equations);
        ratio = Math.min(FIRST_RATIO, largestRatio);
        now = new Station(small(startup.holding(), 0), 0, startup.extraConductance());
        before = now;
        earlier = now;
    }

    /**
     * A place on the way.
     *
     * @param orbit held there
     * @param amplitude of the site's voltage, V
     * @param load that holds it, S
     */
    record Station(Orbit orbit, double amplitude, double load) {
        boolean held() {
            return load > 0;
        }

        Station on(double[] mesh) {
            return new Station(orbit.onMesh(mesh), amplitude, load);
        }
    }

    /**
     * Where the march ended.
     *
     * @param orbit at which no load is left; null when there is none
     * @param reason why, when there is none
     * @param amplitude the last amplitude reached, V
     * @param load the load there, S
     */
    record Arrival(@Nullable Orbit orbit, SteadyState.Reason reason, double amplitude, double load) {}

    int iterations() {
        return newton.iterations();
    }

    /** Highest voltage of a net at rest, V: the measure of what a stage can swing. */
    double supply() {
        return supply;
    }

    Station now() {
        return now;
    }

    /** The station before, on the same mesh. */
    Station before() {
        return before;
    }

    /** Goes up to the first orbit that needs no load and would lack some with more amplitude: where an oscillation settles. */
    Arrival run() {
        if (!begin()) return ended(SteadyState.Reason.NO_START);
        while (!atEnd()) {
            Orbit foreseen = foreseen();
            if (foreseen != null) return new Arrival(foreseen, SteadyState.Reason.NONE, now.amplitude, 0);
            if (!advance()) return ended(stuck());
            if (!before.held() || now.held()) continue;
            Orbit landed = land(before, now);
            if (landed != null) return new Arrival(landed, SteadyState.Reason.NONE, now.amplitude, 0);
            if (!retreat()) return ended(SteadyState.Reason.MARCH_STUCK);
        }
        return ended(outcome());
    }

    /** Where the last two stations foresee the end of the load within the next stride: the orbit without any, if it lies there. */
    private @Nullable Orbit foreseen() {
        if (slanted || !now.held() || before.amplitude == 0 || before.load <= now.load) return null;
        double end = now.amplitude + now.load * (now.amplitude - before.amplitude) / (before.load - now.load);
        double farthest = now.amplitude * ratio;
        if (end > farthest) return null;
        Orbit orbit = extrapolated(before, now, end);
        system.setLoad(0);
        if (!newton.improve(orbit, now.orbit, Closing.Free.FREQUENCY, 0, NEWTON_STEPS)) return null;
        double landed = Closing.condition(orbit, orbit.x, site, 1);
        return landed > now.amplitude && landed < farthest ? orbit : null;
    }

    private Arrival ended(SteadyState.Reason reason) {
        return new Arrival(null, reason, now.amplitude, now.load);
    }

    /** What the end of the way means. */
    SteadyState.Reason outcome() {
        if (!now.held()) return SteadyState.Reason.DECAYS;
        return far() ? SteadyState.Reason.NO_LIMIT : SteadyState.Reason.MARCH_STUCK;
    }

    /** Beyond the supply a stage that still needs help only clips harder; stuck there is an answer. */
    SteadyState.Reason stuck() {
        return !now.held() && !small() ? SteadyState.Reason.DECAYS : SteadyState.Reason.MARCH_STUCK;
    }

    /** Finds the smallest amplitude's orbit, beside the operating point. */
    boolean begin() {
        double amplitude = FIRST_AMPLITUDE;
        Orbit orbit = small(startup.holding(), amplitude);
        system.plan(orbit);
        system.setLoad(startup.extraConductance());
        while (!newton.improve(orbit, Closing.Free.FREQUENCY_AND_LOAD, amplitude, NEWTON_STEPS)) {
            amplitude /= 4;
            now = new Station(orbit, amplitude, startup.extraConductance());
            if (amplitude < SMALLEST_AMPLITUDE) return false;
            orbit = small(startup.holding(), amplitude);
            system.setLoad(startup.extraConductance());
        }
        now = new Station(orbit, amplitude, system.load());
        before = new Station(rest(orbit), 0, startup.extraConductance());
        earlier = before;
        return true;
    }

    boolean atEnd() {
        return steps >= MOST_STEPS || far() || (slanted && now.amplitude < FIRST_AMPLITUDE);
    }

    private boolean far() {
        return now.amplitude >= LARGEST_AMPLITUDE * supply + 1 && deviceSwing() >= LARGEST_AMPLITUDE * supply + 1;
    }

    /**
     * Half of the largest swing of a net that a device sees, V. A coil in series with its capacitor carries Q times what the two do
     * together: its own voltage says nothing about whether anything limits it. Without devices, the site's amplitude.
     */
    private double deviceSwing() {
        if (deviceNets.length == 0) return now.amplitude;
        double[] swings = now.orbit.swings();
        double most = 0;
        for (int net : deviceNets) most = Math.max(most, swings[net] / 2);
        return most;
    }

    private static int[] deviceNets(Equations equations) {
        return equations.circuit().parts().stream()
                .filter(p -> p instanceof Bipolar
                        || p instanceof Jfet
                        || p instanceof Mosfet
                        || p instanceof DualGateMosfet
                        || p instanceof Diode)
                .flatMap(p -> p.nets().stream())
                .mapToInt(equations::net)
                .filter(net -> net > 0)
                .distinct()
                .toArray();
    }

    /** Whether the stage swings less than its supply, so that more amplitude may still change what it does. */
    boolean small() {
        return Math.min(now.amplitude, deviceSwing()) < supply;
    }

    /** One step up; false when not even the smallest succeeds. */
    boolean advance() {
        while (!slanted && steps++ < MOST_STEPS) {
            watch.check();
            int iterations = newton.iterations();
            Station next = at(now.amplitude * ratio);
            if (next == null) {
                boolean more = shorten();
                if (ratio < SHORT_RATIO) more |= densify();
                if (!more) {
                    slanted = stuck() == SteadyState.Reason.MARCH_STUCK && before.amplitude > 0;
                    if (!slanted) return false;
                }
                continue;
            }
            if (bends(next) && ratio > BENT_RATIO) {
                ratio = Math.sqrt(ratio);
                continue;
            }
            double[] mesh = Remesh.follow(next.orbit, equations, intervals);
            earlier = before;
            before = now.on(mesh);
            now = next.on(mesh);
            if (newton.iterations() - iterations <= EASY) ratio = Math.min(largestRatio, ratio * 1.3);
            return true;
        }
        return slanted && advanceAlong();
    }

    /** Whether the load went elsewhere than the last two stations foresaw, on a march that may not step over anything. */
    private boolean bends(Station next) {
        if (!careful || before.amplitude == 0) return false;
        double share = (next.amplitude - now.amplitude) / (now.amplitude - before.amplitude);
        double foreseen = now.load + share * (now.load - before.load);
        double size = Math.max(Math.abs(before.load), Math.max(Math.abs(now.load), Math.abs(next.load)));
        return Math.abs(next.load - foreseen) > MOST_BEND * size;
    }

    /** One step along the curve; false when not even the smallest succeeds. */
    private boolean advanceAlong() {
        while (steps++ < MOST_STEPS) {
            watch.check();
            int iterations = newton.iterations();
            Station next = along(length);
            if (next == null) {
                length /= 2;
                if (length < SMALLEST_LENGTH) return false;
                continue;
            }
            double[] mesh = Remesh.follow(next.orbit, equations, intervals);
            earlier = before;
            before = now.on(mesh);
            now = next.on(mesh);
            if (newton.iterations() - iterations <= EASY) length = Math.min(LARGEST_LENGTH, 1.5 * length);
            return true;
        }
        return false;
    }

    /** The orbit so far along the last two stations' secant; null when Newton does not find it. */
    private @Nullable Station along(double far) {
        double volts = now.amplitude, siemens = Math.max(Math.abs(now.load), Math.abs(startup.extraConductance()));
        double x = (now.amplitude - before.amplitude) / volts, y = (now.load - before.load) / siemens;
        double secant = Math.hypot(x, y);
        Closing.Slant slant = new Closing.Slant(x / secant / volts, y / secant / siemens);
        double wanted = slant.byAmplitude() * now.amplitude + slant.byLoad() * now.load + far;
        Orbit trial = now.orbit.copy();
        double share = far / secant;
        for (int p = 0; p < trial.x.length; p++) trial.x[p] += share * (now.orbit.x[p] - before.orbit.x[p]);
        trial.frequency += share * (now.orbit.frequency - before.orbit.frequency);
        system.setLoad(now.load + share * (now.load - before.load));
        system.closing().setSlant(slant);
        boolean found = newton.improve(trial, Closing.Free.FREQUENCY_AND_LOAD, wanted, NEWTON_STEPS);
        system.closing().setSlant(Closing.Slant.AMPLITUDE);
        if (!found) return null;
        return new Station(trial, Closing.condition(trial, trial.x, site, 1), system.load());
    }

    boolean slanted() {
        return slanted;
    }

    /** Goes back on the last step and takes the next one shorter; false when it is short enough. */
    boolean retreat() {
        now = before;
        before = earlier.on(now.orbit.mesh);
        if (slanted) length /= 4;
        return slanted ? length >= SMALLEST_LENGTH : shorten();
    }

    private boolean shorten() {
        ratio = Math.sqrt(ratio);
        return ratio >= SMALLEST_RATIO;
    }

    /** Twice the intervals where the waveform is too sharp for those it has; false where that is not worth it or was done. */
    private boolean densify() {
        if (intervals >= MOST_INTERVALS || stuck() == SteadyState.Reason.DECAYS) return false;
        intervals *= 2;
        double[] mesh = Remesh.follow(now.orbit, equations, intervals);
        before = before.on(mesh);
        now = now.on(mesh);
        system.plan(now.orbit);
        ratio = REFINED_RATIO;
        return true;
    }

    /** The orbit held at another amplitude, by extrapolation from the last two; null when Newton does not find it. */
    @Nullable
    Station at(double amplitude) {
        Orbit trial = extrapolated(before, now, amplitude);
        system.setLoad(now.load);
        boolean found = newton.improve(trial, now.orbit, Closing.Free.FREQUENCY_AND_LOAD, amplitude, NEWTON_STEPS);
        return found ? new Station(trial, amplitude, system.load()) : null;
    }

    /** Between an amplitude that could carry load and one that could not, or the other way: the orbit without any. One mesh. */
    @Nullable
    Orbit land(Station below, Station above) {
        double share = below.load / (below.load - above.load);
        Orbit orbit = below.orbit.copy();
        for (int p = 0; p < orbit.x.length; p++) orbit.x[p] += share * (above.orbit.x[p] - orbit.x[p]);
        orbit.frequency += share * (above.orbit.frequency - orbit.frequency);
        system.setLoad(0);
        if (!newton.improve(orbit, Closing.Free.FREQUENCY, 0, NEWTON_STEPS)) return null;
        double landed = Closing.condition(orbit, orbit.x, site, 1);
        double low = Math.min(below.amplitude, above.amplitude), high = Math.max(below.amplitude, above.amplitude);
        double slack = slanted ? high - low + SMALLEST_LENGTH * high : 0.05 * (high - low);
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

    private static Orbit extrapolated(Station before, Station now, double to) {
        Orbit orbit = now.orbit.copy(), from = before.orbit;
        double share = (to - now.amplitude) / (now.amplitude - before.amplitude);
        for (int p = 0; p < orbit.x.length; p++) orbit.x[p] += share * (now.orbit.x[p] - from.x[p]);
        if (before.amplitude > 0) orbit.frequency += share * (now.orbit.frequency - from.frequency);
        return orbit;
    }
}
