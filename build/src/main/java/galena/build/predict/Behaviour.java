package galena.build.predict;

import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.engine.operating.OperatingPoint;
import galena.engine.startup.Linearised;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.AllOrbits;
import galena.engine.steady.Floquet;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a free-running circuit does beyond the everyday case of one growing mode that leads to one stable orbit. All orbits are asked
 * for only where that does not tell it all: they cost some tenths of a second.
 *
 * @param state the oscillation that figures are taken from: the one asked about, or a stable one that only a kick leads to
 * @param words for the builder; empty in the everyday case
 * @param notes every orbit and threshold, and what could not be decided
 */
record Behaviour(SteadyState state, String words, List<String> notes) {
    static Behaviour of(
            OperatingPoint.Found point, Optional<Startup> startup, SteadyState state, Accuracy accuracy, Watch watch) {
        if (startup.isEmpty() || everyday(point, startup.get(), state)) return new Behaviour(state, "", List.of());
        AllOrbits.Answer answer = new AllOrbits(accuracy, watch).of(point);
        List<String> notes = new ArrayList<>();
        for (AllOrbits.Listed orbit : answer.orbits()) notes.add(sentence(orbit));
        notes.addAll(answer.reasons());
        boolean silent = state instanceof SteadyState.NotFound;
        SteadyState told = silent ? settled(answer).<SteadyState>map(o -> o).orElse(state) : state;
        return new Behaviour(told, answer.verdict().toString(), notes);
    }

    private static boolean everyday(OperatingPoint.Found point, Startup startup, SteadyState state) {
        if (!startup.grows() || !(state instanceof SteadyState.Found found)) return false;
        if (found.floquet().stability() != Floquet.Stability.STABLE) return false;
        long growing = Linearised.at(point.equations(), point.x()).modes().stream()
                .filter(m -> m.growth() > 0)
                .count();
        return growing < 2;
    }

    private static Optional<SteadyState.Found> settled(AllOrbits.Answer answer) {
        return answer.orbits().stream()
                .filter(o -> o.stability() == Floquet.Stability.STABLE)
                .map(AllOrbits.Listed::state)
                .findFirst();
    }

    private static String sentence(AllOrbits.Listed orbit) {
        SteadyState.Found found = orbit.state();
        String site = found.site().part();
        double volts =
                found.waveforms().amplitude(found.site().a(), found.site().b(), 1);
        String kick = orbit.threshold() > 0
                ? ", beyond a kick of " + Engineering.print(orbit.threshold(), Unit.VOLT, 3) + " peak"
                : "";
        String stability = orbit.stability() == Floquet.Stability.STABLE
                ? "stable"
                : orbit.stability() == Floquet.Stability.UNSTABLE ? "not stable" : "stable or not is undecided";
        return "an oscillation at " + Engineering.print(found.waveforms().frequency(), Unit.HERTZ, 6) + ", "
                + Engineering.print(volts, Unit.VOLT, 3) + " peak across " + site + ": " + stability + kick;
    }
}
