package galena.build.guard;

import galena.build.folder.Build;
import galena.build.folder.Supply;
import galena.build.guard.GuardReport.Effect;
import galena.build.guard.GuardReport.Moves;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.predict.StaticDepth;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.steady.Accuracy;
import galena.engine.steady.OrbitAdjoint;
import galena.engine.steady.OrbitAdjoint.Gradient;
import galena.engine.steady.OrbitAdjoint.Parameter;
import galena.engine.steady.Waveforms;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** The gradients of the figures that a builder watches, each from one adjoint solve; and re-trimming to first order. */
final class Figures {
    static final int FIRST_HARMONIC = 2;
    private static final int LAST_HARMONIC = 5;
    private static final double POSITION_STEP = 1e-3;
    private static final double DECIBELS = 20 / Math.log(10);

    private final OrbitAdjoint adjoint;
    private final Gradient frequency;
    /** Of the output coil's current by harmonic, the fundamental first. */
    private final List<Gradient> amplitudes = new ArrayList<>();

    private final double[] sizes;
    private final Optional<Gradient> supply;
    private final Optional<StaticDepth> depth;
    private String trimmer = "";
    private Raw byTrimmer;

    /** Derivatives by one parameter, per unit: Hz, A by harmonic, A, a fraction. */
    private record Raw(double frequency, double[] amplitudes, double supply, double depth) {
        Raw plus(double times, Raw other) {
            double[] sum = amplitudes.clone();
            for (int h = 0; h < sum.length; h++) sum[h] += times * other.amplitudes[h];
            return new Raw(
                    frequency + times * other.frequency,
                    sum,
                    supply + times * other.supply,
                    depth + times * other.depth);
        }
    }

    Figures(Build build, Running running, Accuracy accuracy, Progress progress) {
        Waveforms waveforms = running.state().waveforms();
        Equations equations = waveforms.equations();
        adjoint = new OrbitAdjoint(running.state());
        int coil = equations.current(running.outputBranch()).orElseThrow();
        sizes = new double[LAST_HARMONIC];
        for (int h = 1; h <= LAST_HARMONIC; h++) {
            amplitudes.add(adjoint.amplitude(coil, 0, h));
            sizes[h - 1] = waveforms.amplitude(coil, 0, h);
        }
        frequency = adjoint.frequency();
        supply = equations.current(Supply.NAME).map(adjoint::mean);
        depth = running.audioSource()
                .filter(source -> running.audioLevel() > 0)
                .flatMap(source -> StaticDepth.of(
                        running.state(),
                        adjoint,
                        source,
                        running.audioLevel(),
                        running.outputBranch(),
                        accuracy,
                        progress.watch()));
        byTrimmer = raw(OrbitAdjoint::nothing);
        for (String name : build.adjustments()) {
            Raw turned = raw(at -> turned(running, name, at));
            if (Math.abs(turned.frequency) > Math.abs(byTrimmer.frequency)) {
                byTrimmer = turned;
                trimmer = name;
            }
        }
    }

    private static Parameter turned(Running running, String name, OrbitAdjoint at) {
        Circuit circuit = at.equations().circuit();
        double position = running.position(name);
        double low = Math.max(0, position - POSITION_STEP), high = Math.min(1, position + POSITION_STEP);
        return at.between(
                Equations.of(running.turned(circuit, name, low)),
                Equations.of(running.turned(circuit, name, high)),
                (high - low) / 2);
    }

    OrbitAdjoint adjoint() {
        return adjoint;
    }

    String trimmer() {
        return trimmer;
    }

    double hertzPerPercent() {
        return byTrimmer.frequency / 100;
    }

    /** The static negative peak, where it can be had. */
    Optional<Double> depth() {
        return depth.map(StaticDepth::value);
    }

    /** The number of the strongest harmonic of the output. */
    int strongest() {
        int strongest = FIRST_HARMONIC;
        for (int h = FIRST_HARMONIC + 1; h <= LAST_HARMONIC; h++) {
            if (sizes[h - 1] > sizes[strongest - 1]) strongest = h;
        }
        return strongest;
    }

    /** Hz that one unit of a parameter does at fixed trim. */
    double hertz(Function<OrbitAdjoint, Parameter> parameter) {
        return frequency.by(parameter.apply(adjoint));
    }

    /** What {@code size} of a parameter does, at fixed trim and re-trimmed. */
    Moves moves(Function<OrbitAdjoint, Parameter> parameter, double size) {
        Raw fixed = raw(parameter);
        double turn = byTrimmer.frequency == 0 ? 0 : -fixed.frequency / byTrimmer.frequency;
        return new Moves(size * fixed.frequency, effect(fixed, size), effect(fixed.plus(turn, byTrimmer), size));
    }

    private Raw raw(Function<OrbitAdjoint, Parameter> parameter) {
        Parameter here = parameter.apply(adjoint);
        return new Raw(
                frequency.by(here),
                amplitudes.stream().mapToDouble(g -> g.by(here)).toArray(),
                supply.map(g -> -g.by(here)).orElse(0.0),
                depth.map(d -> d.by(parameter)).orElse(0.0));
    }

    private Effect effect(Raw raw, double size) {
        double output = raw.amplitudes[0] / sizes[0];
        List<Double> harmonics = new ArrayList<>();
        for (int h = FIRST_HARMONIC; h <= LAST_HARMONIC; h++) {
            harmonics.add(size * DECIBELS * (raw.amplitudes[h - 1] / sizes[h - 1] - output));
        }
        return new Effect(size * DECIBELS * output, harmonics, depth.map(d -> size * raw.depth), size * raw.supply);
    }
}
