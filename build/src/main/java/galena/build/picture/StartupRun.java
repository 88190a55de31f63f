package galena.build.picture;

import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.engine.equations.Equations;
import galena.engine.equations.Evaluation;
import galena.engine.startup.Mode;
import galena.engine.timerun.Passage;
import galena.engine.timerun.TimeRun;
import java.util.Arrays;
import java.util.Optional;

/** Integrates the start of an oscillation and keeps the band that the voltage fills. */
final class StartupRun implements TimeRun.Listener {
    private static final int COLUMNS = 240;
    private static final double TOLERANCE = 1e-3;
    private static final double STEPS_A_CYCLE = 60;
    private static final double LEAST_STEPS = 16;
    /** Peak of the kick at the mode's largest voltage, V. */
    private static final double KICK = 1e-3;
    /** Growth at the small-signal rate up to the tank's final amplitude, and twice that again for limiting and bias to settle. */
    private static final double MARGIN = 3;

    private static final double MOST_CYCLES = 4000;
    private static final double LEAST_CYCLES = 30;
    private static final int SHARES = 4;

    private final int at;
    private final int to;
    private final double column;
    private final double[] low = new double[COLUMNS];
    private final double[] high = new double[COLUMNS];

    private StartupRun(int at, int to, double length) {
        this.at = at;
        this.to = to;
        column = length / COLUMNS;
        Arrays.fill(low, Double.POSITIVE_INFINITY);
        Arrays.fill(high, Double.NEGATIVE_INFINITY);
    }

    static Optional<Strip> of(Running running, int at, int to, Progress progress) {
        Mode mode = running.startup().mode();
        if (!running.startup().grows()) return Optional.empty();
        progress.at(0.1, "startup");
        Equations equations = running.point().equations();
        var state = running.state();
        double settled =
                state.waveforms().amplitude(state.site().a(), state.site().b(), 1);
        double growth = Math.log(Math.max(10, settled / KICK)) / mode.growth();
        double f = mode.frequency();
        double length = Math.max(LEAST_CYCLES, Math.min(MOST_CYCLES, MARGIN * growth * f)) / f;
        StartupRun run = new StartupRun(at, to, length);
        TimeRun.End end = new TimeRun(equations, TOLERANCE, 1 / (LEAST_STEPS * f), progress.watch())
                .run(running.point().x(), kick(running, mode), 0, length, 1 / (STEPS_A_CYCLE * f), run);
        return end == TimeRun.End.REACHED ? Optional.of(run.strip()) : Optional.empty();
    }

    /** The charges that the mode's voltages hold. */
    private static double[] kick(Running running, Mode mode) {
        Equations equations = running.point().equations();
        Evaluation e = equations.newEvaluation();
        equations.evaluate(running.point().x(), 0, e);
        double largest = 0;
        for (int k = 1; k <= equations.nets(); k++) largest = Math.max(largest, Math.abs(mode.re()[k]));
        double[] charge = new double[equations.stride()];
        for (int entry = 1; entry < equations.pattern().entries(); entry++) {
            int row = equations.pattern().row(entry), from = equations.pattern().column(entry);
            charge[row] += KICK / largest * e.c[entry] * mode.re()[from];
        }
        return charge;
    }

    @Override
    public boolean step(Passage passage) {
        for (int s = 1; s <= SHARES; s++) {
            double share = s / (double) SHARES, v = passage.at(at, to, share);
            int k = Math.min(COLUMNS - 1, (int) (passage.time(share) / column));
            low[k] = Math.min(low[k], v);
            high[k] = Math.max(high[k], v);
        }
        return true;
    }

    private Strip strip() {
        double[] time = new double[COLUMNS];
        for (int k = 0; k < COLUMNS; k++) {
            time[k] = (k + 0.5) * column;
            if (low[k] > high[k]) { // no step fell here: what stood before stands on
                low[k] = k == 0 ? 0 : low[k - 1];
                high[k] = k == 0 ? 0 : high[k - 1];
            }
        }
        return new Strip(time, low, high);
    }
}
