package galena.build.predict;

import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.startup.Startup;
import galena.engine.steady.SteadyState;
import java.util.List;
import java.util.Optional;

/** Startup in a builder's terms, with the weakest device as the one that counts. */
final class StartFigures {
    private static final String BASIS = "predicted, parts within tolerance, 95 %";
    private static final String TYPICAL = "predicted, typical parts";
    private static final String WORST = "predicted, devices over their sheets";

    /** Where a startup is thought to begin: about the noise of a tank, common practice. */
    private static final double FROM = 1e-6;

    private StartFigures() {}

    static Prediction.StartupFigures of(
            OperatingPoint.Found point,
            Startup startup,
            List<Variation> variations,
            Devices devices,
            SteadyState state,
            String behaviour) {
        double margin = startup.margin();
        Interval interval = new Interval();
        for (Variation v : variations) {
            double below = margin(v.below(), point).orElse(margin),
                    above = margin(v.above(), point).orElse(margin);
            interval.add((above - below) / (2 * v.step()) * v.limit());
        }
        for (Devices.Pair pair : devices.ends()) {
            interval.addSides(
                    margin(pair.weak(), point).orElse(margin) - margin,
                    margin(pair.strong(), point).orElse(margin) - margin);
        }
        double lowest = margin;
        String weakest = "all devices typical";
        for (Devices.Pair pair : devices.corners()) {
            for (Circuit circuit : new Circuit[] {pair.weak(), pair.strong()}) {
                Optional<Double> there = margin(circuit, point);
                if (there.isEmpty() || there.get() >= lowest) continue;
                lowest = there.get();
                weakest = "least favourable " + pair.what();
            }
        }
        double f = startup.mode().frequency();
        return new Prediction.StartupFigures(
                startup.grows(),
                behaviour,
                new Figure.Known(f, Unit.HERTZ, f, f, TYPICAL, "starting frequency", ""),
                new Figure.Known(
                        margin,
                        Unit.FRACTION,
                        Math.min(margin, interval.low(margin)),
                        Math.max(margin, interval.high(margin)),
                        BASIS,
                        "startup margin",
                        startup.site().part()),
                startup.site().part(),
                time(startup, state),
                startup.shares(),
                new Figure.Known(lowest, Unit.FRACTION, lowest, lowest, WORST, "startup margin", weakest));
    }

    /** With typical parts alone; the weakest device is left to the full prediction. */
    static Prediction.StartupFigures typical(Startup startup, SteadyState state) {
        double f = startup.mode().frequency(), margin = startup.margin();
        return new Prediction.StartupFigures(
                startup.grows(),
                "",
                new Figure.Known(f, Unit.HERTZ, f, f, TYPICAL, "starting frequency", ""),
                new Figure.Known(
                        margin,
                        Unit.FRACTION,
                        margin,
                        margin,
                        TYPICAL,
                        "startup margin",
                        startup.site().part()),
                startup.site().part(),
                time(startup, state),
                startup.shares(),
                new Figure.Missing("startup margin", "the weakest device is looked for in the full prediction"));
    }

    private static Optional<Double> margin(Circuit circuit, OperatingPoint.Found near) {
        if (!(OperatingPointLadder.near(Equations.of(circuit), near.x()) instanceof OperatingPoint.Found point)) {
            return Optional.empty();
        }
        return Startup.readiest(point).map(Startup::margin).filter(Double::isFinite);
    }

    private static Figure time(Startup startup, SteadyState state) {
        String what = "startup time";
        if (!startup.grows()) return new Figure.Missing(what, "it does not start by itself");
        if (!(state instanceof SteadyState.Found found)) {
            return new Figure.Missing(what, "there is no final amplitude to grow to");
        }
        double amplitude =
                found.waveforms().amplitude(startup.site().a(), startup.site().b(), 1);
        double seconds = startup.timeToGrow(FROM, amplitude);
        return new Figure.Known(
                seconds, Unit.SECOND, seconds / 2, seconds * 2, "small-signal growth from 1 µV", what, "");
    }
}
