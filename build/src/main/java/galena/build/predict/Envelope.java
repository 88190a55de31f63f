package galena.build.predict;

import galena.engine.circuit.Circuit;
import galena.engine.circuit.Structure;
import galena.engine.equations.Equations;
import galena.engine.part.Capacitor;
import galena.engine.part.Part;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.engine.steady.Accuracy;
import galena.engine.steady.Followed;
import galena.engine.steady.Follower;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import galena.engine.steady.Waveforms;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The circuit of a carrier with capacitors held, as the static modulation curve wants it. */
public final class Envelope {
    private Envelope() {}

    /** Large capacitors become the voltages that they hold in a carrier, as far as the structure allows. */
    static Circuit hold(Waveforms carrier) {
        return hold(carrier, holding(carrier));
    }

    /** The capacitors that hold their voltage while audio passes, as far as the structure allows. */
    public static List<String> holding(Waveforms carrier) {
        Circuit circuit = carrier.equations().circuit();
        List<String> names = new ArrayList<>();
        for (Part part : circuit.parts()) {
            if (!(part instanceof Capacitor c) || c.capacitance() < StaticModulation.HOLDS) continue;
            Circuit trial = circuit.with(held(carrier, c));
            if (Structure.faults(trial).stream().anyMatch(f -> f.kind().fatal())) continue;
            circuit = trial;
            names.add(c.name());
        }
        return names;
    }

    /** These capacitors become the voltages that they hold. */
    public static Circuit hold(Waveforms carrier, List<String> names) {
        return hold(carrier.equations().circuit(), carrier, names);
    }

    /** The same in a circuit of which the carrier need not be the steady state. */
    static Circuit hold(Circuit circuit, Waveforms carrier, List<String> names) {
        Circuit still = circuit;
        for (String name : names) {
            still = still.with(held(carrier, (Capacitor) still.part(name).orElseThrow()));
        }
        return still;
    }

    private static VoltageSource held(Waveforms carrier, Capacitor c) {
        double volts = carrier.meanVoltage(c.from()) - carrier.meanVoltage(c.to());
        return new VoltageSource(c.name(), c.from(), c.to(), new Wave.Direct(volts));
    }

    /** The held circuit with its audio source at a voltage. */
    public static Circuit at(Circuit held, String source, double volts) {
        VoltageSource audio = (VoltageSource) held.part(source).orElseThrow();
        return held.with(new VoltageSource(source, audio.plus(), audio.minus(), new Wave.Direct(volts)));
    }

    /** The held circuit's own steady state at zero audio, from the carrier's: where that holds, the two are one. */
    public static Optional<SteadyState.Found> centre(
            SteadyState.Found carrier, Circuit held, Accuracy accuracy, Watch watch) {
        Equations equations = Equations.of(held);
        Followed start = Followed.of(carrier).carriedTo(equations);
        Follower follower = new Follower(equations, start.site(), accuracy, watch);
        return follower.follow(equations, start)
                .map(follower::settle)
                .filter(SteadyState.Found.class::isInstance)
                .map(SteadyState.Found.class::cast);
    }
}
