package galena.build.predict;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.part.Capacitor;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.engine.steady.Accuracy;
import galena.engine.steady.OrbitAdjoint;
import galena.engine.steady.OrbitAdjoint.Gradient;
import galena.engine.steady.OrbitAdjoint.Parameter;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * The static negative peak at the audio's level, 1 − trough over carrier, and its exact derivatives. With large capacitors held, trough
 * and carrier are two steady states of one circuit, each with its adjoint; a parameter moves them directly, and through the
 * voltages that it makes the carrier leave on the capacitors. One per thread.
 */
public final class StaticDepth {
    private static final double STEP = 1e-4;

    private final OrbitAdjoint carrier;
    private final List<Held> held = new ArrayList<>();
    private final Side rest;
    private final Side trough;

    /**
     * A held capacitor: the gradients of its two ends' means in the carrier.
     *
     * @param to empty at ground
     */
    private record Held(String name, Optional<Gradient> from, Optional<Gradient> to) {}

    /** One steady state of the held circuit, and its amplitude's derivative by each held voltage. */
    private record Side(OrbitAdjoint adjoint, Gradient gradient, double amplitude, double[] byHeld) {
        double slope(Function<OrbitAdjoint, Parameter> parameter, double[] volts) {
            double slope = gradient.by(parameter.apply(adjoint));
            for (int k = 0; k < volts.length; k++) slope += byHeld[k] * volts[k];
            return slope;
        }
    }

    private StaticDepth(
            SteadyState.Found unmodulated,
            OrbitAdjoint carrier,
            List<String> names,
            String coil,
            SteadyState.Found centre,
            SteadyState.Found end) {
        this.carrier = carrier;
        Equations equations = unmodulated.waveforms().equations();
        for (String name : names) {
            Capacitor c = (Capacitor) equations.circuit().part(name).orElseThrow();
            held.add(new Held(name, mean(equations, c.from()), mean(equations, c.to())));
        }
        rest = side(centre, coil);
        trough = side(end, coil);
    }

    private Optional<Gradient> mean(Equations equations, String net) {
        int unknown = equations.net(net);
        return unknown == 0 ? Optional.empty() : Optional.of(carrier.mean(unknown));
    }

    private Side side(SteadyState.Found state, String coil) {
        OrbitAdjoint adjoint = new OrbitAdjoint(state);
        Equations equations = state.waveforms().equations();
        Gradient gradient = adjoint.amplitude(equations.current(coil).orElseThrow(), 0, 1);
        double[] byHeld = new double[held.size()];
        for (int k = 0; k < byHeld.length; k++) {
            String name = held.get(k).name();
            byHeld[k] = gradient.between(
                    shifted(equations.circuit(), name, -STEP), shifted(equations.circuit(), name, STEP), STEP);
        }
        return new Side(adjoint, gradient, state.waveforms().currentAmplitude(coil, 1), byHeld);
    }

    private static Equations shifted(Circuit circuit, String name, double volts) {
        VoltageSource source = (VoltageSource) circuit.part(name).orElseThrow();
        return Equations.of(Envelope.at(circuit, name, ((Wave.Direct) source.wave()).value() + volts));
    }

    /**
     * @param unmodulated the carrier
     * @param carrier its adjoint
     * @param source audio source
     * @param level of it, peak, V
     * @param coil whose current is modulated
     * @return empty when the oscillation is lost at that level
     */
    public static Optional<StaticDepth> of(
            SteadyState.Found unmodulated,
            OrbitAdjoint carrier,
            String source,
            double level,
            String coil,
            Accuracy accuracy,
            Watch watch) {
        List<String> names = Envelope.holding(unmodulated.waveforms());
        Circuit circuit = Envelope.hold(unmodulated.waveforms(), names);
        Optional<SteadyState.Found> centre =
                Envelope.centre(unmodulated, Envelope.at(circuit, source, 0), accuracy, watch);
        if (centre.isEmpty()) return Optional.empty();
        Optional<SteadyState.Found> lowest = Optional.empty();
        for (int sign = -1; sign <= 1; sign += 2) {
            Optional<SteadyState.Found> end = walk(circuit, source, sign * level, centre.get(), accuracy, watch);
            if (end.isEmpty()) return Optional.empty();
            boolean lower = lowest.isEmpty() || amplitude(end.get(), coil) < amplitude(lowest.get(), coil);
            if (lower) lowest = end;
        }
        return Optional.of(new StaticDepth(unmodulated, carrier, names, coil, centre.get(), lowest.orElseThrow()));
    }

    private static double amplitude(SteadyState.Found state, String coil) {
        return state.waveforms().currentAmplitude(coil, 1);
    }

    private static Optional<SteadyState.Found> walk(
            Circuit circuit, String source, double to, SteadyState.Found centre, Accuracy accuracy, Watch watch) {
        SteadyOscillation steady = new SteadyOscillation(accuracy, watch);
        SteadyState.Found now = centre;
        int steps = 4;
        for (int k = 1; k <= steps; k++) {
            Equations next = Equations.of(Envelope.at(circuit, source, to * k / steps));
            if (!(steady.solveNear(next, now) instanceof SteadyState.Found found)) return Optional.empty();
            now = found;
        }
        return Optional.of(now);
    }

    /** The negative peak, a fraction. */
    public double value() {
        return 1 - trough.amplitude / rest.amplitude;
    }

    /**
     * Its derivative by a parameter.
     *
     * @param parameter how the parameter enters a circuit: asked for the carrier's, and for the same with capacitors held
     */
    public double by(Function<OrbitAdjoint, Parameter> parameter) {
        Parameter there = parameter.apply(carrier);
        double[] volts = new double[held.size()];
        for (int k = 0; k < volts.length; k++) {
            volts[k] = held.get(k).from().map(g -> g.by(there)).orElse(0.0)
                    - held.get(k).to().map(g -> g.by(there)).orElse(0.0);
        }
        double a = rest.amplitude;
        return -trough.slope(parameter, volts) / a + trough.amplitude / (a * a) * rest.slope(parameter, volts);
    }
}
