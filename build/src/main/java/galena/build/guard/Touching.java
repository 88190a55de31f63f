package galena.build.guard;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Load;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.Followed;
import galena.engine.steady.Follower;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import java.util.Optional;

/**
 * What a probe does to a carrier, solved in full: on the carrier's own mesh, so that the mesh's error is in neither of the two
 * frequencies' difference; from cold where the carrier does not lead there.
 */
final class Touching {
    private final Circuit circuit;
    private final SteadyState.Found found;
    private final Watch watch;

    Touching(Circuit circuit, SteadyState.Found found, Watch watch) {
        this.circuit = circuit;
        this.found = found;
        this.watch = watch;
    }

    /** Hz by a load from one net to another; empty when the oscillation stops. */
    Optional<Double> by(String net, String against, double ohms, double farads) {
        Equations loaded = Equations.of(circuit.plus(new Load("probe", net, against, ohms, farads)));
        Followed here = Followed.of(found), start = here.carriedTo(loaded);
        Optional<Double> there = new Follower(loaded, start.site(), Accuracy.LIVE, watch)
                .follow(loaded, start)
                .map(followed ->
                        followed.waveforms().frequency() - here.waveforms().frequency());
        return there.isPresent() ? there : cold(loaded);
    }

    private Optional<Double> cold(Equations loaded) {
        if (!(OperatingPointLadder.climb(loaded) instanceof OperatingPoint.Found point)) return Optional.empty();
        Optional<Startup> startup = Startup.readiest(point).filter(Startup::grows);
        if (startup.isEmpty()) return Optional.empty();
        return new SteadyOscillation(Accuracy.LIVE, watch).solve(point, startup.get()) instanceof SteadyState.Found cold
                ? Optional.of(cold.waveforms().frequency() - found.waveforms().frequency())
                : Optional.empty();
    }
}
