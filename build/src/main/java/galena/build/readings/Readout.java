package galena.build.readings;

import galena.build.folder.LogEntry.What;
import galena.build.folder.Supply;
import galena.build.folder.TestPoint;
import galena.engine.equations.Equations;
import galena.engine.steady.OrbitAdjoint;
import galena.engine.steady.OrbitAdjoint.Gradient;
import galena.engine.steady.OrbitAdjoint.Parameter;
import galena.engine.steady.Waveforms;
import java.util.Optional;

/**
 * One reading off a period: sizes as natural logarithms, levels in dB, mean voltages in volts.
 *
 * @param what is read
 * @param at unknown of the equations
 * @param to the one against which
 */
record Readout(What what, int at, int to) {
    private static final double DECIBELS = 20 / Math.log(10);

    static Readout of(Asked asked, Equations equations) {
        if (asked.what() == What.CURRENT) {
            return new Readout(asked.what(), equations.current(Supply.NAME).orElse(0), 0);
        }
        Optional<TestPoint> point = asked.situation().point();
        return new Readout(
                asked.what(),
                point.map(p -> equations.net(p.at())).orElse(0),
                point.map(p -> equations.net(p.to())).orElse(0));
    }

    private int harmonic() {
        return what == What.THIRD_HARMONIC ? 3 : 2;
    }

    double value(Waveforms w) {
        return switch (what) {
            case CARRIER -> Math.log(w.frequency());
            case CURRENT -> Math.log(-w.mean(at));
            case VOLTAGE -> w.mean(at) - w.mean(to);
            case AMPLITUDE -> Math.log(w.amplitude(at, to, 1));
            default -> DECIBELS * Math.log(w.amplitude(at, to, harmonic()) / w.amplitude(at, to, 1));
        };
    }

    Gradient[] gradients(OrbitAdjoint adjoint) {
        return switch (what) {
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
        return switch (what) {
            case CARRIER -> first / w.frequency();
            case CURRENT -> first / w.mean(at);
            case VOLTAGE -> gradients.length == 1 ? first : first - gradients[1].by(parameter);
            case AMPLITUDE -> first / w.amplitude(at, to, 1);
            default ->
                DECIBELS
                        * (first / w.amplitude(at, to, harmonic())
                                - gradients[1].by(parameter) / w.amplitude(at, to, 1));
        };
    }
}
