package galena.build.predict;

import galena.engine.circuit.Circuit;
import galena.engine.circuit.Structure;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Capacitor;
import galena.engine.part.Part;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.OrbitDerivatives;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import galena.engine.steady.Waveforms;
import galena.signal.modulation.EnvelopePeriod;
import java.util.Optional;
import org.hipparchus.analysis.interpolation.DividedDifferenceInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialFunctionNewtonForm;

/**
 * The circuit of a carrier with large capacitors held, as the static modulation curve wants it, and a quick look at that curve from
 * five of its points.
 */
public final class Envelope {
    private static final int PERIOD = 64;
    private static final double SMALL = 1e-3;

    private Envelope() {}

    /** Large capacitors become the voltages that they hold in a carrier, as far as the structure allows. */
    static Circuit hold(Waveforms carrier) {
        Circuit circuit = carrier.equations().circuit();
        for (Part part : circuit.parts()) {
            if (!(part instanceof Capacitor c) || c.capacitance() < StaticModulation.HOLDS) continue;
            double volts = carrier.meanVoltage(c.from()) - carrier.meanVoltage(c.to());
            Circuit trial = circuit.with(new VoltageSource(c.name(), c.from(), c.to(), new Wave.Direct(volts)));
            if (Structure.faults(trial).stream().noneMatch(f -> f.kind().fatal())) circuit = trial;
        }
        return circuit;
    }

    /** The held circuit with its audio source at a voltage. */
    static Circuit at(Circuit held, String source, double volts) {
        VoltageSource audio = (VoltageSource) held.part(source).orElseThrow();
        return held.with(new VoltageSource(source, audio.plus(), audio.minus(), new Wave.Direct(volts)));
    }

    /** The held circuit's own steady state at zero audio, from cold: its structure is not the carrier's. */
    static Optional<SteadyState.Found> centre(Circuit held, String site, Accuracy accuracy, Watch watch) {
        Equations equations = Equations.of(held);
        if (!(OperatingPointLadder.climb(equations) instanceof OperatingPoint.Found point)) return Optional.empty();
        return Startup.readiest(point)
                .filter(s -> s.site().part().equals(site))
                .map(s -> new SteadyOscillation(accuracy, watch).solve(point, s))
                .filter(SteadyState.Found.class::isInstance)
                .map(SteadyState.Found.class::cast);
    }

    /**
     * The envelope's distortion at a wanted depth, from a quartic through five points of the static curve: the carrier, and
     * the audio voltage that gives the depth by the curve's slope, and half of it, either way.
     *
     * @param carrier unmodulated
     * @param source audio source
     * @param coil whose current is modulated
     * @param depth wanted, a fraction
     * @param level of the audio, V: the measure of a small step
     * @return empty when the oscillation is lost before that depth
     */
    public static Optional<Double> distortionAt(
            SteadyState.Found carrier,
            String source,
            String coil,
            double depth,
            double level,
            Accuracy accuracy,
            Watch watch) {
        Circuit held = hold(carrier.waveforms());
        Optional<SteadyState.Found> centre = centre(held, carrier.site().part(), accuracy, watch);
        if (centre.isEmpty() || !(level > 0)) return Optional.empty();
        double rest = centre.get().waveforms().currentAmplitude(coil, 1);
        SteadyOscillation steady = new SteadyOscillation(accuracy, watch);
        double step = SMALL * level;
        int unknown = centre.get().waveforms().equations().current(coil).orElseThrow();
        double slope = new OrbitDerivatives(centre.get())
                .between(Equations.of(at(held, source, -step)), Equations.of(at(held, source, step)), step)
                .amplitude(unknown, 0, 1);
        double audio = Math.abs(depth * rest / slope);
        double[] places = {-audio, -audio / 2, 0, audio / 2, audio}, amplitudes = new double[places.length];
        amplitudes[2] = rest;
        for (int side = -1; side <= 1; side += 2) {
            SteadyState.Found now = centre.get();
            for (int k = 1; k <= 2; k++) {
                Equations there = Equations.of(at(held, source, places[2 + side * k]));
                if (!(steady.solveNear(there, now) instanceof SteadyState.Found next)) return Optional.empty();
                now = next;
                amplitudes[2 + side * k] = now.waveforms().currentAmplitude(coil, 1);
            }
        }
        PolynomialFunctionNewtonForm curve = new DividedDifferenceInterpolator().interpolate(places, amplitudes);
        double[] period = new double[PERIOD];
        for (int k = 0; k < PERIOD; k++) period[k] = curve.value(audio * Math.sin(2 * Math.PI * k / PERIOD));
        return Optional.of(new EnvelopePeriod(period, rest).distortion());
    }
}
