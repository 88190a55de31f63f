package galena.build.robust;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.Floquet;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import galena.engine.steady.Waveforms;
import java.util.Optional;
import java.util.concurrent.CancellationException;

/**
 * What became of one circuit.
 *
 * @param end in which class it ends
 * @param growing whether a pair of modes grows at rest
 * @param detail in words
 * @param seconds it took
 */
record Trial(End end, boolean growing, String detail, double seconds) {
    /** Longer than this is a hang. */
    private static final long PATIENCE = 20_000_000_000L;

    /** Classes of ends. */
    enum End {
        /** A certified orbit, stable. */
        ORBIT(true),
        /** A certified orbit that is not stable: its amplitude wanders. */
        SQUEGS(true),
        /** A certified orbit whose stability lies within its error bound. */
        UNDECIDED(true),
        /** Nothing in it oscillates, and it is said so. */
        QUIET(true),
        /** A named fault of the circuit. */
        FAULT(true),
        /** No operating point found; net and part are named. */
        NO_REST(false),
        /** It grows, and no orbit was found; the reason is named. */
        LOST(false),
        /** A number that is none. */
        NOT_A_NUMBER(false),
        /** A raw exception. */
        THREW(false),
        HUNG(false);

        final boolean answered;

        End(boolean answered) {
            this.answered = answered;
        }
    }

    static Trial of(Circuit circuit) {
        long start = System.nanoTime();
        boolean[] growing = {false};
        String[] detail = {""};
        End end;
        try {
            end = run(circuit, growing, detail, new Watch(() -> System.nanoTime() - start > PATIENCE));
        } catch (CancellationException late) {
            end = End.HUNG;
        } catch (RuntimeException raw) {
            end = End.THREW;
            StackTraceElement[] at = raw.getStackTrace();
            detail[0] = raw + (at.length > 0 ? " at " + at[0] : "");
        }
        return new Trial(end, growing[0], detail[0], (System.nanoTime() - start) / 1e9);
    }

    private static End run(Circuit circuit, boolean[] growing, String[] detail, Watch watch) {
        OperatingPoint rest = OperatingPointLadder.climb(Equations.of(circuit));
        if (!(rest instanceof OperatingPoint.Found point)) {
            detail[0] = rest.toString();
            return End.NO_REST;
        }
        Optional<Startup> startup = Startup.readiest(point);
        growing[0] = startup.filter(Startup::grows).isPresent();
        if (startup.isEmpty()) {
            detail[0] = "no mode that swings";
            return End.QUIET;
        }
        SteadyState state = new SteadyOscillation(Accuracy.CERTIFIED, watch).solve(point, startup.get());
        if (state instanceof SteadyState.NotFound none) {
            detail[0] = none + ", site " + startup.get().site().part() + ", load " + none.load() + ", margin "
                    + startup.get().margin();
            return growing[0] ? End.LOST : End.QUIET;
        }
        return judge((SteadyState.Found) state, detail);
    }

    private static End judge(SteadyState.Found found, String[] detail) {
        Waveforms waves = found.waveforms();
        double sum = waves.frequency() + found.error().frequency() + waves.powerImbalance();
        for (int k = 1; k < waves.equations().stride(); k++)
            for (int h = 0; h <= 3; h++) sum += waves.coefficient(k, h)[0] + waves.coefficient(k, h)[1];
        Floquet floquet = found.floquet();
        for (Floquet.Mode mode : floquet.modes()) sum += mode.re() + mode.im() + mode.bound();
        detail[0] = String.format(
                java.util.Locale.ROOT, "%.3f kHz, %d intervals", waves.frequency() / 1e3, waves.intervals());
        if (!Double.isFinite(sum)) return End.NOT_A_NUMBER;
        return switch (floquet.stability()) {
            case STABLE -> End.ORBIT;
            case UNSTABLE -> End.SQUEGS;
            case UNDECIDED -> End.UNDECIDED;
        };
    }
}
