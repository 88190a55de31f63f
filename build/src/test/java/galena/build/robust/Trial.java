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
import galena.engine.timerun.AmplitudeRun;
import java.lang.management.ManagementFactory;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CancellationException;

/**
 * What became of one circuit.
 *
 * @param end in which class it ends
 * @param growing whether a pair of modes grows at rest
 * @param detail in words
 * @param seconds of processor time for the answer; a run in time that confirms it is not counted
 */
record Trial(End end, boolean growing, String detail, double seconds) {
    /** Classes of ends. */
    enum End {
        /** A certified orbit, stable. */
        ORBIT(true),
        /** A certified orbit that is not stable, and a run in time whose amplitude wanders. */
        SQUEGS(true),
        /** A certified orbit whose stability lies within its error bound. */
        UNDECIDED(true),
        /** Nothing in it oscillates, and it is said so. */
        QUIET(true),
        /** A named fault of the circuit. */
        FAULT(true),
        /** A certified orbit that is not stable, and a run in time that stands still all the same. */
        CONTRADICTED(false),
        /** No operating point found; net and part are named. */
        NO_REST(false),
        /** It grows, and no orbit was found; the reason is named. */
        LOST(false),
        /** A number that is none. */
        NOT_A_NUMBER(false),
        /** A raw exception. */
        THREW(false),
        /** No end within {@link #PATIENCE}. */
        HUNG(false);

        final boolean answered;

        End(boolean answered) {
            this.answered = answered;
        }
    }

    /** Nanoseconds of the processor; longer than this is a hang. */
    private static final long PATIENCE = 20_000_000_000L;

    /** A carrier whose peaks vary by less than this share stands. */
    private static final double STEADY = 0.98;

    private static final double GROWTH = Math.log(100);
    private static final double FEWEST_CYCLES = 200;
    private static final double MOST_CYCLES = 20_000;

    static Trial of(Circuit circuit) {
        return new Course(circuit).run();
    }

    /** One trial on its way. */
    private static final class Course {
        private final Circuit circuit;
        private final long started = processor();
        private boolean growing;
        private String detail = "";
        private double seconds;

        Course(Circuit circuit) {
            this.circuit = circuit;
        }

        Trial run() {
            End end;
            try {
                end = answer();
            } catch (CancellationException late) {
                end = End.HUNG;
            } catch (RuntimeException raw) {
                end = End.THREW;
                StackTraceElement[] at = raw.getStackTrace();
                detail = raw + (at.length > 0 ? " at " + at[0] : "");
            }
            if (seconds == 0) seconds = elapsed();
            return new Trial(end, growing, detail, seconds);
        }

        private static long processor() {
            return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        }

        private double elapsed() {
            return (processor() - started) / 1e9;
        }

        private static Watch patience() {
            long start = processor();
            return new Watch(() -> processor() - start > PATIENCE);
        }

        private End answer() {
            OperatingPoint rest = OperatingPointLadder.climb(Equations.of(circuit));
            if (!(rest instanceof OperatingPoint.Found point)) {
                detail = rest.toString();
                return End.NO_REST;
            }
            Optional<Startup> startup = Startup.readiest(point);
            growing = startup.filter(Startup::grows).isPresent();
            if (startup.isEmpty()) {
                detail = "no mode that swings";
                return End.QUIET;
            }
            SteadyState state = new SteadyOscillation(Accuracy.CERTIFIED, patience()).solve(point, startup.get());
            if (state instanceof SteadyState.Found found) return judge(found);
            Startup start = startup.get();
            detail = state + ", site " + start.site().part() + ", margin " + start.margin();
            return growing ? End.LOST : End.QUIET;
        }

        private End judge(SteadyState.Found found) {
            Waveforms waves = found.waveforms();
            double sum = waves.frequency() + found.error().frequency() + waves.powerImbalance();
            for (int k = 1; k < waves.equations().stride(); k++)
                for (int h = 0; h <= 3; h++) sum += waves.coefficient(k, h)[0] + waves.coefficient(k, h)[1];
            Floquet floquet = found.floquet();
            for (Floquet.Mode mode : floquet.modes()) sum += mode.re() + mode.im() + mode.bound();
            seconds = elapsed();
            detail = String.format(Locale.ROOT, "%.3f kHz, %d intervals", waves.frequency() / 1e3, waves.intervals());
            if (!Double.isFinite(sum)) return End.NOT_A_NUMBER;
            return switch (floquet.stability()) {
                case STABLE -> End.ORBIT;
                case UNSTABLE -> watched(found, floquet);
                case UNDECIDED -> End.UNDECIDED;
            };
        }

        /** What a run in time from the unstable orbit shows, long enough for a thousandth to grow to a tenth and go on. */
        private End watched(SteadyState.Found found, Floquet floquet) {
            double perCycle = floquet.modes().get(0).exponent() / floquet.frequency();
            double cycles = Math.min(MOST_CYCLES, 2 * GROWTH / perCycle + FEWEST_CYCLES);
            AmplitudeRun run = AmplitudeRun.from(found, cycles, patience());
            detail += String.format(
                    Locale.ROOT,
                    ", grows by %.3g a cycle, steadiness %.3f in %.0f cycles",
                    perCycle,
                    run.steadiness(),
                    cycles);
            return run.steadiness() < STEADY ? End.SQUEGS : End.CONTRADICTED;
        }
    }
}
