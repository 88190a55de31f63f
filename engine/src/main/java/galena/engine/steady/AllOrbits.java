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
 */
public final class AllOrbits {
    /** Modes more damped than this can't be kept alive by any kick that the supply allows. */
    private static final double HOPELESS_Q = 3;

    private final Accuracy accuracy;
    private final Watch watch;

    public AllOrbits(Accuracy accuracy, Watch watch) {
        this.accuracy = accuracy;
        this.watch = watch;
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
     * One orbit.
     *
     * @param state the orbit
     * @param stability of it
     * @param byItself whether small oscillations of its mode grow towards it
     * @param threshold peak volts at the site beyond which the circuit must be kicked; zero when it starts by itself
     */
    public record Listed(SteadyState.Found state, Floquet.Stability stability, boolean byItself, double threshold) {}

    /**
     * @param verdict in sum
     * @param orbits those that a circuit can settle in or near, by mode
     * @param reasons of the modes that have none, in words
     */
    public record Answer(Verdict verdict, List<Listed> orbits, List<String> reasons) {
        public Answer {
            orbits = List.copyOf(orbits);
            reasons = List.copyOf(reasons);
        }
    }

    /** All orbits reachable from an operating point. */
    public Answer of(OperatingPoint.Found point) {
        Linearised linearised = Linearised.at(point.equations(), point.x());
        List<Listed> orbits = new ArrayList<>();
        List<String> reasons = new ArrayList<>();
        boolean grows = false;
        for (Mode mode : linearised.modes()) {
            watch.check();
            boolean growing = mode.growth() > 0;
            grows |= growing;
            if (!growing && mode.q() < HOPELESS_Q) continue;
            Startup startup = Startup.of(point, linearised, mode);
            if (!Double.isFinite(startup.extraConductance())) continue;
            follow(point, startup, growing, orbits, reasons);
        }
        if (!grows) {
            // a drive too strong for a mode to turn round still ends in an oscillation
            Optional<Startup> overdriven = Startup.readiest(point).filter(Startup::grows);
            overdriven.ifPresent(startup -> follow(point, startup, true, orbits, reasons));
            grows = overdriven.isPresent();
        }
        boolean runsOff = linearised.runaways().length > 0;
        return new Answer(verdict(orbits, grows, runsOff), orbits, reasons);
    }

    private void follow(
            OperatingPoint.Found point, Startup startup, boolean growing, List<Listed> orbits, List<String> reasons) {
        OrbitSystem system = new OrbitSystem(point.equations(), startup.site());
        AmplitudeMarch march = new AmplitudeMarch(point, startup, system, watch);
        AmplitudeMarch.Arrival arrival = march.run();
        if (arrival.orbit() == null) {
            if (growing) reasons.add(arrival.reason().toString());
            return;
        }
        SteadyState state = new Refinement(system, Closing.Free.FREQUENCY, accuracy, watch).fromRough(arrival.orbit());
        if (!(state instanceof SteadyState.Found found)) {
            reasons.add(((SteadyState.NotFound) state).reason().toString());
            return;
        }
        boolean known = orbits.stream().anyMatch(o -> same(o.state(), found));
        if (!known) {
            orbits.add(new Listed(found, found.floquet().stability(), growing, growing ? 0 : arrival.threshold()));
        }
    }

    private static boolean same(SteadyState.Found a, SteadyState.Found b) {
        double fa = a.waveforms().frequency(), fb = b.waveforms().frequency();
        if (Math.abs(fa / fb - 1) > 1e-5) return false;
        int net = 1;
        double va = a.waveforms().amplitude(a.site().a(), a.site().b(), net);
        double vb = b.waveforms().amplitude(a.site().a(), a.site().b(), net);
        return Math.abs(va - vb) <= 1e-3 * Math.max(va, vb);
    }

    private static Verdict verdict(List<Listed> orbits, boolean grows, boolean runsOff) {
        long stable = orbits.stream()
                .filter(o -> o.stability == Floquet.Stability.STABLE)
                .count();
        if (stable > 1) return Verdict.SEVERAL;
        if (stable == 1) {
            boolean byItself = orbits.stream().anyMatch(o -> o.byItself);
            return byItself ? Verdict.STARTS : Verdict.ONLY_IF_KICKED;
        }
        boolean unstable = orbits.stream().anyMatch(o -> o.stability == Floquet.Stability.UNSTABLE);
        if (unstable && grows) return Verdict.SQUEGS;
        if (!orbits.isEmpty()) return Verdict.UNDECIDED;
        if (runsOff && !grows) return Verdict.LOCKS_AT_REST;
        return grows ? Verdict.UNDECIDED : Verdict.DECAYS;
    }
}
