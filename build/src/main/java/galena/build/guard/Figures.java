package galena.build.guard;

import galena.build.folder.Build;
import galena.build.folder.Supply;
import galena.build.predict.Running;
import galena.engine.equations.Equations;
import galena.engine.steady.OrbitAdjoint;
import galena.engine.steady.OrbitAdjoint.Gradient;
import galena.engine.steady.Waveforms;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** The gradients of the figures that a builder watches, each from one adjoint solve; and re-trimming to first order. */
final class Figures {
    private static final int HARMONICS = 5;
    private static final double POSITION_STEP = 1e-3;
    private static final double DECIBELS = 20 / Math.log(10);

    private final Gradient frequency;
    private final Gradient output;
    private final Gradient harmonic;
    private final Optional<Gradient> supply;
    private final double outputSize;
    private final double harmonicSize;
    private final String trimmer;
    private final double byTrimmer;
    private final double outputByTrimmer;

    Figures(Build build, Running running) {
        Waveforms waveforms = running.state().waveforms();
        Equations equations = waveforms.equations();
        OrbitAdjoint adjoint = new OrbitAdjoint(running.state());
        int coil = equations.current(running.outputCoil()).orElseThrow();
        int strongest = 2;
        for (int h = 3; h <= HARMONICS; h++) {
            if (waveforms.amplitude(coil, 0, h) > waveforms.amplitude(coil, 0, strongest)) strongest = h;
        }
        frequency = adjoint.frequency();
        output = adjoint.amplitude(coil, 0, 1);
        harmonic = adjoint.amplitude(coil, 0, strongest);
        supply = equations.current(Supply.NAME).map(adjoint::mean);
        outputSize = waveforms.amplitude(coil, 0, 1);
        harmonicSize = waveforms.amplitude(coil, 0, strongest);
        String best = "";
        double most = 0, outputThere = 0;
        for (String name : build.adjustments()) {
            double position = running.position(name);
            double low = Math.max(0, position - POSITION_STEP), high = Math.min(1, position + POSITION_STEP);
            Equations below = Equations.of(running.turned(name, low)), above = Equations.of(running.turned(name, high));
            double slope = frequency.between(below, above, (high - low) / 2);
            if (Math.abs(slope) > Math.abs(most)) {
                most = slope;
                best = name;
                outputThere = output.between(below, above, (high - low) / 2);
            }
        }
        trimmer = best;
        byTrimmer = most;
        outputByTrimmer = outputThere;
    }

    Gradient frequency() {
        return frequency;
    }

    String trimmer() {
        return trimmer;
    }

    double hertzPerPercent() {
        return byTrimmer / 100;
    }

    /** What a parameter does, {@code size} of it, at fixed trim and re-trimmed. */
    GuardReport.Moves moves(ToDoubleFunction<Gradient> derivative, double size) {
        double hertz = derivative.applyAsDouble(frequency), amplitude = derivative.applyAsDouble(output);
        double turned = byTrimmer == 0 ? 0 : -hertz / byTrimmer;
        double relative = amplitude / outputSize;
        double harmonicRelative = derivative.applyAsDouble(harmonic) / harmonicSize - relative;
        return new GuardReport.Moves(
                size * hertz,
                size * DECIBELS * relative,
                size * DECIBELS * (amplitude + turned * outputByTrimmer) / outputSize,
                size * DECIBELS * harmonicRelative,
                supply.map(g -> -size * derivative.applyAsDouble(g)).orElse(0.0));
    }
}
