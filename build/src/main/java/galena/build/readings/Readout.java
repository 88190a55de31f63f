package galena.build.readings;

import galena.build.folder.LogEntry.What;
import galena.build.folder.Supply;
import galena.build.folder.TestPoint;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.steady.OrbitAdjoint;
import galena.engine.steady.OrbitAdjoint.Gradient;
import galena.engine.steady.OrbitAdjoint.Parameter;
import galena.engine.steady.Waveforms;
import java.util.Optional;

/**
 * One reading off a period: sizes as natural logarithms, levels in dB, mean voltages in volts.
 *
 * @param asked what is read
 * @param at unknown of the equations
 * @param to the one against which
 */
record Readout(Asked asked, int at, int to) {
    private static final double DECIBELS = 20 / Math.log(10);

    static Readout of(Asked asked, Equations equations) {
        if (asked.what() == What.CURRENT) {
            return new Readout(asked, equations.current(Supply.NAME).orElse(0), 0);
        }
        Optional<TestPoint> point = asked.situation().point();
        return new Readout(
                asked,
                point.map(p -> equations.net(p.at())).orElse(0),
                point.map(p -> equations.net(p.to())).orElse(0));
    }

    private int harmonic() {
        return asked.what() == What.THIRD_HARMONIC ? 3 : 2;
    }

    double value(Waveforms w) {
        return switch (asked.what()) {
            case CARRIER -> Math.log(w.frequency());
            case CURRENT -> Math.log(-w.mean(at));
            case VOLTAGE -> w.mean(at) - w.mean(to);
            case AMPLITUDE -> asked.modelled(w.amplitude(at, to, 1));
            default -> DECIBELS * Math.log(w.amplitude(at, to, harmonic()) / w.amplitude(at, to, 1));
        };
    }

    /** At rest: nothing swings, and there is no carrier (not a number). */
    double value(OperatingPoint.Found rest) {
        double[] x = rest.x();
        return switch (asked.what()) {
            case CURRENT -> Math.log(-x[at]);
            case VOLTAGE -> x[at] - x[to];
            case AMPLITUDE -> asked.modelled(0);
            default -> Double.NaN;
        };
    }

    double value(Setting.State state) {
        if (!(state instanceof Setting.Running running)) return value(((Setting.AtRest) state).point());
        Setting.Mesh mesh = running.mesh();
        return value(running.period().waveforms()) + value(mesh.fine()) - value(mesh.coarse());
    }

    Gradient[] gradients(OrbitAdjoint adjoint) {
        return switch (asked.what()) {
            case CARRIER -> new Gradient[] {adjoint.frequency()};
            case CURRENT -> new Gradient[] {adjoint.mean(at)};
            case VOLTAGE ->
                to == 0 ? new Gradient[] {adjoint.mean(at)} : new Gradient[] {adjoint.mean(at), adjoint.mean(to)};
            case AMPLITUDE -> new Gradient[] {adjoint.amplitude(at, to, 1)};
            default -> new Gradient[] {adjoint.amplitude(at, to, harmonic()), adjoint.amplitude(at, to, 1)};
        };
    }

    double slope(Waveforms w, Gradient[] gradients, Parameter parameter) {
        double first = gradients[0].by(parameter);
        return switch (asked.what()) {
            case CARRIER -> first / w.frequency();
            case CURRENT -> first / w.mean(at);
            case VOLTAGE -> gradients.length == 1 ? first : first - gradients[1].by(parameter);
            case AMPLITUDE -> asked.error(w.amplitude(at, to, 1), first);
            default ->
                DECIBELS
                        * (first / w.amplitude(at, to, harmonic())
                                - gradients[1].by(parameter) / w.amplitude(at, to, 1));
        };
    }
}
