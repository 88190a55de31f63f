package galena.engine.steady;

import galena.engine.operating.OperatingPoint;
import galena.engine.startup.Linearised;
import galena.engine.startup.Mode;
import galena.engine.startup.Startup;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Every steady oscillation that the amplitude curves of a circuit's modes pass through, and the verdict that they amount to. A mode
 * that grows has its first orbit where the load it can carry falls to zero; one that does not may still carry load at larger
 * amplitude, between an orbit it must be kicked beyond and one where it settles. Immutable.
 *
 * <p>Not seen: orbits that no mode of the operating point leads to (of half the frequency, or born by a fold of their own), and
 * oscillations that are not periodic beyond their being told as such.
 */
public final class AllOrbits {
    /** Modes more damped than this can't be kept alive by any kick that the supply allows. */
    private static final double HOPELESS_Q = 3;

    /** Newton's last step, as a share of swing, where a multiplier is wanted to nearly all its digits. */
    private static final double LAST_STEP = 1e-9;

    private static final Accuracy SHARP = sharp(Accuracy.CERTIFIED);

    private static final double SAME_FREQUENCY = 1e-5;
    private static final double SAME_AMPLITUDE = 1e-3;

    private final Accuracy accuracy;
    private final Watch watch;

    public AllOrbits(Accuracy accuracy, Watch watch) {
        this.accuracy = accuracy;
        this.watch = watch;
    }

    private static Accuracy sharp(Accuracy like) {
        return new Accuracy(
                like.name(),
                like.frequency(),
                like.harmonicDecibels(),
                like.floor(),
                like.powerImbalance(),
                LAST_STEP,
                like.firstIntervals());
    }

    /** What a builder is told. */
    public enum Verdict {
        STARTS("starts by itself"),
        ONLY_IF_KICKED("starts only if kicked"),
        DECAYS("decays"),
        SQUEGS("squegs: the steady oscillation is not stable, its amplitude wanders"),
        LOCKS_AT_REST("locks at rest: the operating point runs off without oscillating"),
        SEVERAL("settles in one of several oscillations, depending on how it is started"),
        UNDECIDED("cannot be decided to the accuracy at hand");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /**
     * One orbit that the circuit can settle in, or near where it is not stable.
     *
     * @param state the orbit
     * @param stability of it
     * @param byItself whether the small oscillation of its mode grows up to it
     * @param threshold peak volts at the site of the orbit beneath it, beyond which the circuit must be kicked; zero when it starts by
     *     itself
     */
    public record Listed(SteadyState.Found state, Floquet.Stability stability, boolean byItself, double threshold) {}

    /**
     * @param verdict in sum
     * @param orbits those that the circuit can settle in or near, by mode and amplitude
     * @param thresholds orbits that part what settles from what dies, or one settled oscillation from another; not stable
     * @param reasons what could not be found, and what a builder should know beside the verdict
     */
    public record Answer(
            Verdict verdict, List<Listed> orbits, List<SteadyState.Found> thresholds, List<String> reasons) {
        public Answer {
            orbits = List.copyOf(orbits);
            thresholds = List.copyOf(thresholds);
            reasons = List.copyOf(reasons);
        }
    }

    /** All orbits that the amplitude curves from an operating point pass through. */
    public Answer of(OperatingPoint.Found point) {
        Survey survey = survey(point);
        if (survey.rest != Rest.RUNS_OFF) return survey.answer(survey.verdict());
        // where a point runs off to is another point: at rest there it is locked, if it isn't it goes on from there
        List<OperatingPoint.Found> others = new OtherRests(watch).of(point);
        if (others.isEmpty()) {
            survey.reasons.add("the operating point runs off, and where to was not found");
            return survey.answer(Verdict.UNDECIDED);
        }
        boolean locks = false;
        for (OperatingPoint.Found other : others) {
            Survey there = survey(other);
            locks |= there.rest == Rest.STAYS;
            survey.add(there);
        }
        if (locks) return survey.answer(Verdict.LOCKS_AT_REST);
        survey.rest = Rest.OSCILLATES;
        return survey.answer(survey.verdict());
    }

    /** What a small disturbance of an operating point does. */
    private enum Rest {
        STAYS,
        OSCILLATES,
        RUNS_OFF
    }

    private Survey survey(OperatingPoint.Found point) {
        Linearised linearised = Linearised.at(point.equations(), point.x());
        Survey survey = new Survey();
        for (Mode mode : linearised.modes()) {
            watch.check();
            boolean growing = mode.growth() > 0;
            if (growing) survey.rest = Rest.OSCILLATES;
            if (!growing && mode.q() < HOPELESS_Q) continue;
            Startup startup = Startup.of(point, linearised, mode);
            if (Double.isFinite(startup.extraConductance())) follow(point, startup, survey);
        }
        if (survey.rest == Rest.STAYS) {
            // a drive too strong for a mode to turn round still ends in an oscillation
            Optional<Startup> overdriven = Startup.readiest(point).filter(Startup::grows);
            if (overdriven.isPresent()) {
                survey.rest = Rest.OSCILLATES;
                follow(point, overdriven.get(), survey);
            }
        }
        if (survey.rest == Rest.STAYS && linearised.runaways().length > 0) survey.rest = Rest.RUNS_OFF;
        return survey;
    }

    private void follow(OperatingPoint.Found point, Startup startup, Survey survey) {
        OrbitSystem system = new OrbitSystem(point.equations(), startup.site());
        LoadCurve curve =
                new LoadCurve(AmplitudeMarch.careful(point, startup, system, watch, LoadCurve.largestRatio()));
        double threshold = 0;
        boolean byItself = startup.grows(), settled = false, any = false;
        List<LoadCurve.Crossing> crossings = curve.follow();
        system.setLoad(0);
        for (LoadCurve.Crossing crossing : crossings) {
            SteadyState state =
                    new Refinement(system, Closing.Free.FREQUENCY, accuracy, watch).fromRough(crossing.orbit());
            if (!(state instanceof SteadyState.Found found)) {
                survey.reasons.add(((SteadyState.NotFound) state).reason().toString());
            } else if (crossing.falls()) {
                SteadyState.Found sure = decided(found, system);
                survey.addOrbit(new Listed(sure, sure.floquet().stability(), byItself, threshold));
                settled = true;
            } else {
                survey.addThreshold(found);
                threshold = amplitude(found);
            }
            byItself = false;
            any = true;
        }
        if (any) curve.stuck().ifPresent(where -> survey.reasons.add("beyond what is listed, " + where));
        else if (startup.grows()) curve.stuck().ifPresent(survey.reasons::add);
        survey.lost |= startup.grows() && !settled;
    }

    /** A memory of a second beside a microsecond of carrier takes a multiplier to 1e-7: more exactly solved where that is undecided. */
    private SteadyState.Found decided(SteadyState.Found found, OrbitSystem system) {
        if (found.floquet().stability() != Floquet.Stability.UNDECIDED) return found;
        SteadyState sharper = new Refinement(system, Closing.Free.FREQUENCY, SHARP, watch).fromNear(found.coarse());
        return sharper instanceof SteadyState.Found sharp ? sharp : found;
    }

    /** Peak volts of the fundamental at the site. */
    private static double amplitude(SteadyState.Found found) {
        return found.waveforms().amplitude(found.site().a(), found.site().b(), 1);
    }

    /** What is found from an operating point. */
    private static final class Survey {
        private final List<Listed> orbits = new ArrayList<>();
        private final List<SteadyState.Found> thresholds = new ArrayList<>();
        private final List<String> reasons = new ArrayList<>();
        private Rest rest = Rest.STAYS;
        /** A mode grows, and to where was not found. */
        private boolean lost;

        /** An orbit that several modes lead to is listed once, and starts by itself when one of them does. */
        void addOrbit(Listed orbit) {
            for (int k = 0; k < orbits.size(); k++) {
                Listed known = orbits.get(k);
                if (!same(known.state, orbit.state)) continue;
                if (orbit.byItself && !known.byItself) orbits.set(k, orbit);
                return;
            }
            orbits.add(orbit);
        }

        void addThreshold(SteadyState.Found threshold) {
            if (thresholds.stream().noneMatch(t -> same(t, threshold))) thresholds.add(threshold);
        }

        void add(Survey other) {
            other.orbits.forEach(this::addOrbit);
            other.thresholds.forEach(this::addThreshold);
            reasons.addAll(other.reasons);
            lost |= other.lost;
        }

        Answer answer(Verdict verdict) {
            return new Answer(verdict, orbits, thresholds, reasons);
        }

        private long count(Floquet.Stability stability) {
            return orbits.stream().filter(o -> o.stability == stability).count();
        }

        /** From a point that does not run off. */
        Verdict verdict() {
            return rest == Rest.STAYS ? fromStableRest() : fromUnstableRest();
        }

        private Verdict fromStableRest() {
            if (count(Floquet.Stability.STABLE) > 0) return Verdict.ONLY_IF_KICKED;
            if (orbits.isEmpty() && thresholds.isEmpty()) return Verdict.DECAYS;
            reasons.add("it rests until it is kicked; whether it stays alive after that is not decided");
            return Verdict.UNDECIDED;
        }

        private Verdict fromUnstableRest() {
            long stable = count(Floquet.Stability.STABLE);
            if (stable > 1) return Verdict.SEVERAL;
            boolean undecided = count(Floquet.Stability.UNDECIDED) > 0;
            if (stable == 1) {
                boolean byItself = orbits.stream().anyMatch(o -> o.byItself && o.stability == Floquet.Stability.STABLE);
                if (byItself) return Verdict.STARTS;
                reasons.add("what grows from rest does not settle in its own oscillation, and another is stable:"
                        + " whether it ends there must be watched in time");
                return Verdict.UNDECIDED;
            }
            boolean squegs = count(Floquet.Stability.UNSTABLE) > 0 && !undecided && !lost;
            return squegs ? Verdict.SQUEGS : Verdict.UNDECIDED;
        }
    }

    private static boolean same(SteadyState.Found a, SteadyState.Found b) {
        double fa = a.waveforms().frequency(), fb = b.waveforms().frequency();
        if (Math.abs(fa / fb - 1) > SAME_FREQUENCY) return false;
        double va = amplitude(a),
                vb = b.waveforms().amplitude(a.site().a(), a.site().b(), 1);
        return Math.abs(va - vb) <= SAME_AMPLITUDE * Math.max(va, vb);
    }
}
