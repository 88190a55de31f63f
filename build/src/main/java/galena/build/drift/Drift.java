package galena.build.drift;

import galena.build.drift.DriftReport.Moment;
import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.folder.Supply;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.predict.Running.NotRunning;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.wiring.CircuitOf;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.steady.Accuracy;
import galena.engine.steady.OrbitDerivatives;
import galena.trade.battery.Battery;
import galena.trade.battery.Cell;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/**
 * Runs a build from switch-on until its battery is spent. The charge falls as the solved current drains the capacity that the cell
 * delivers at that current; steps are even in charge but finer at both ends, where a battery's voltage falls fastest, and time is
 * integrated by the trapezoidal rule. Without a battery it runs for a day on the supply as it is.
 */
public final class Drift {
    /** Off by more than this a digitally tuned set sounds wrong: the pass line for an LC carrier, common practice. */
    public static final double CHANNEL = 500;

    /** Distortion up to which a modulation counts as clean; the acceptance line of home builders at 80 %, common practice. */
    private static final double CLEAN = 0.05;

    /** Of the wanted depth that must be left. */
    private static final double KEPT = 0.9;

    private static final int STEPS = 40;
    /** Towards the moment at which it stops. */
    private static final int BISECTIONS = 6;

    private static final double HOUR = 3600;
    private static final double DAY = 24 * HOUR;
    private static final double COLDEST = -10, WARMEST = 50, TEMPERATURE_STEP = 5;
    private static final double HALF_VOLT_STEP = 0.05;
    private static final String BASIS = "predicted, typical parts; capacity as the cell's maker states it";

    private final Running running;
    private final Warming warming;
    private final double channel;
    private final Progress progress;
    private final Bench bench;

    private Drift(Running running, Warming warming, double channel, Progress progress) {
        this.running = running;
        this.warming = warming;
        this.channel = channel;
        this.progress = progress;
        this.bench = new Bench(running, progress);
    }

    /**
     * @param overlay its temperature gives way to the warming's
     * @param channel how far the carrier may wander, Hz either way
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws NotRunning when nothing oscillates at switch-on
     */
    public static DriftReport of(
            BuildFolder folder, Overlay overlay, Warming warming, double channel, Progress progress)
            throws BadInputException, NoOperatingPoint, NotRunning {
        if (!(channel > 0)) throw new IllegalArgumentException("a channel is wider than zero, not " + channel);
        progress.at(0, "steady state");
        Running running =
                Running.of(folder.build(), overlay.atTemperature(warming.from()), Accuracy.CERTIFIED, progress);
        return new Drift(running, warming, channel, progress).report();
    }

    /** A run, and whether it ended because the oscillation stopped. */
    private record Run(List<Moment> moments, boolean stopped, List<Double> low, List<Double> high) {}

    private DriftReport report() {
        List<Moment> temperatures = temperatures();
        Run run = battery().map(this::discharge).orElseGet(this::day);
        Moment first = run.moments.get(0);
        Optional<Double> wanted = bench.depth() > 0 ? Optional.of(bench.depth()) : Optional.empty();
        return new DriftReport(
                first.frequency(),
                running.outputPart(),
                channel,
                wanted,
                bench.audio(),
                run.moments,
                temperatures,
                pushing(),
                leaves(run, first.frequency()),
                wanted.isPresent()
                        ? loses(run, wanted.get())
                        : new Figure.Missing(
                                "hours to lose depth", "the intent names no modulation, or nothing modulates"),
                stops(run),
                spent(run));
    }

    private Optional<Battery> battery() {
        return running.build()
                .supply()
                .flatMap(s ->
                        s instanceof Supply.OfBattery named ? Optional.of(CircuitOf.battery(named)) : Optional.empty());
    }

    private double startCharge() {
        return running.build().supply().orElseThrow() instanceof Supply.OfBattery named ? named.charge() : 1;
    }

    private Run discharge(Battery battery) {
        bench.home();
        Discharge run = new Discharge(battery);
        double start = startCharge();
        if (!run.to(start)) return run.stoppedAtOnce(start);
        for (int k = 1; k <= STEPS; k++) {
            progress.at(0.3 + 0.7 * k / STEPS, "discharge");
            double share = Math.sin(Math.PI * k / (2 * STEPS));
            double charge = start * (1 - share * share), before = run.charge();
            if (run.to(charge)) continue;
            for (int b = 0; b < BISECTIONS; b++) {
                double middle = (before + charge) / 2;
                if (run.to(middle)) before = middle;
                else charge = middle;
            }
            return run.ended(true);
        }
        return run.ended(false);
    }

    /** A battery emptied moment by moment; time is kept with each capacity that the cell may have. */
    private final class Discharge {
        private final Battery battery;
        private final List<Moment> moments = new ArrayList<>();
        private final List<Double> low = new ArrayList<>();
        private final List<Double> high = new ArrayList<>();

        Discharge(Battery battery) {
            this.battery = battery;
        }

        private Moment last() {
            return moments.get(moments.size() - 1);
        }

        double charge() {
            return last().charge();
        }

        /** Down to a charge; false when nothing oscillates there. */
        boolean to(double charge) {
            double guess = 0;
            if (!moments.isEmpty()) {
                Moment before = last();
                double full = battery.capacity(before.supply()).typical() / before.supply();
                guess = before.seconds() + (before.charge() - charge) * full;
            }
            Optional<Moment> there = at(battery, guess, charge);
            if (there.isEmpty()) return false;
            add(there.get());
            return true;
        }

        /** Time is what the charge between two moments takes at the mean of their drains. */
        private void add(Moment now) {
            double seconds = 0, least = 0, most = 0;
            if (!moments.isEmpty()) {
                double used = charge() - now.charge();
                seconds = last().seconds() + used * seconds(battery, last(), now, Cell.Capacity::typical);
                least = low.get(low.size() - 1) + used * seconds(battery, last(), now, Cell.Capacity::low);
                most = high.get(high.size() - 1) + used * seconds(battery, last(), now, Cell.Capacity::high);
            }
            moments.add(timed(now, seconds));
            low.add(least);
            high.add(most);
        }

        Run ended(boolean stopped) {
            return new Run(moments, stopped, low, high);
        }

        /** Where even the first moment is lost, as with another supply laid over the build. */
        Run stoppedAtOnce(double charge) {
            add(bench.here(charge, warming.from()));
            return ended(true);
        }
    }

    private Optional<Moment> at(Battery battery, double seconds, double charge) {
        return bench.at(seconds, charge, battery.emf(charge), battery.resistance(charge), warming.at(seconds));
    }

    /** Seconds that a full charge would take at the mean drain between two moments. */
    private static double seconds(Battery battery, Moment a, Moment b, ToDoubleFunction<Cell.Capacity> capacity) {
        double slow = capacity.applyAsDouble(battery.capacity(a.supply())) / a.supply();
        double fast = capacity.applyAsDouble(battery.capacity(b.supply())) / b.supply();
        return (slow + fast) / 2;
    }

    private static Moment timed(Moment m, double seconds) {
        return new Moment(
                seconds,
                m.charge(),
                m.celsius(),
                m.terminals(),
                m.frequency(),
                m.output(),
                m.supply(),
                m.depth(),
                m.distortion());
    }

    /** On a supply that does not empty, a day of warming. */
    private Run day() {
        bench.home();
        List<Moment> moments = new ArrayList<>();
        List<Double> times = new ArrayList<>();
        for (int k = 0; k <= STEPS; k++) {
            progress.at(0.3 + 0.7 * k / STEPS, "warming");
            double share = (double) k / STEPS, seconds = DAY * share * share;
            Optional<Moment> there = bench.at(seconds, 1, emf(), ohms(), warming.at(seconds));
            if (there.isEmpty()) {
                if (k == 0) {
                    moments.add(bench.here(1, warming.from()));
                    times.add(0.0);
                }
                return new Run(moments, true, times, times);
            }
            moments.add(there.get());
            times.add(seconds);
        }
        return new Run(moments, false, times, times);
    }

    private double emf() {
        return supply().map(galena.engine.part.Battery::emf).orElse(0.0);
    }

    private double ohms() {
        return supply().map(galena.engine.part.Battery::internalResistance).orElse(0.0);
    }

    private Optional<galena.engine.part.Battery> supply() {
        return running.circuit()
                .part(Supply.NAME)
                .filter(galena.engine.part.Battery.class::isInstance)
                .map(galena.engine.part.Battery.class::cast);
    }

    private List<Moment> temperatures() {
        List<Moment> moments = new ArrayList<>();
        double charge = battery().isPresent() ? startCharge() : 1;
        // outward from where the carrier is known, so that each step is short
        for (double celsius = Math.ceil(warming.from() / TEMPERATURE_STEP) * TEMPERATURE_STEP;
                celsius <= WARMEST;
                celsius += TEMPERATURE_STEP) {
            progress.at(0.1, "temperatures");
            bench.at(0, charge, emf(), ohms(), celsius).ifPresent(moments::add);
        }
        bench.home();
        for (double celsius = Math.ceil(warming.from() / TEMPERATURE_STEP) * TEMPERATURE_STEP - TEMPERATURE_STEP;
                celsius >= COLDEST;
                celsius -= TEMPERATURE_STEP) {
            progress.at(0.2, "temperatures");
            Optional<Moment> there = bench.at(0, charge, emf(), ohms(), celsius);
            if (there.isPresent()) moments.add(0, there.get());
        }
        return moments;
    }

    private double pushing() {
        if (supply().isEmpty()) return 0;
        galena.engine.part.Battery b = supply().get();
        Circuit circuit = running.circuit();
        Equations low = Equations.of(circuit.with(new galena.engine.part.Battery(
                b.name(), b.plus(), b.minus(), b.emf() - HALF_VOLT_STEP, b.internalResistance())));
        Equations high = Equations.of(circuit.with(new galena.engine.part.Battery(
                b.name(), b.plus(), b.minus(), b.emf() + HALF_VOLT_STEP, b.internalResistance())));
        return new OrbitDerivatives(running.state())
                .between(low, high, HALF_VOLT_STEP)
                .frequency();
    }

    private Figure leaves(Run run, double carrier) {
        String what = "hours until the carrier has left its channel";
        return first(
                run,
                what,
                "it stays within its channel",
                m -> Math.abs(m.frequency() - carrier) > channel,
                m -> Math.abs(m.frequency() - carrier) - channel);
    }

    /** Below the least depth or above the clean distortion, whichever comes first. */
    private Figure loses(Run run, double wanted) {
        return first(
                run,
                "hours until the wanted depth is lost",
                "it keeps the depth",
                m -> m.depth().isEmpty() || missing(m, wanted) > 0,
                m -> m.depth().isEmpty() ? CLEAN : missing(m, wanted));
    }

    private static double missing(Moment m, double wanted) {
        double shallow = KEPT * wanted - m.depth().orElse(0.0);
        return Math.max(shallow, m.distortion().orElse(0.0) - CLEAN);
    }

    private Figure stops(Run run) {
        String what = "hours until it stops";
        if (!run.stopped) return new Figure.Missing(what, "it oscillates to the end");
        int last = run.moments.size() - 1;
        return known(what, run.moments.get(last).seconds(), run.low.get(last), run.high.get(last));
    }

    private Figure spent(Run run) {
        String what = "hours until the battery's end voltage";
        if (battery().isEmpty()) return new Figure.Missing(what, "the supply is not a battery");
        double end = battery().get().endVoltage();
        return first(
                run,
                what,
                "its charge is spent before its terminals fall that far",
                m -> m.terminals() < end,
                m -> end - m.terminals());
    }

    /** When something first holds, between moments where its measure passes zero. */
    private static Figure first(
            Run run, String what, String never, Predicate<Moment> holds, ToDoubleFunction<Moment> measure) {
        for (int k = 0; k < run.moments.size(); k++) {
            if (!holds.test(run.moments.get(k))) continue;
            if (k == 0) return known(what, 0, 0, 0);
            double before = measure.applyAsDouble(run.moments.get(k - 1)),
                    after = measure.applyAsDouble(run.moments.get(k));
            double share = after > before ? -before / (after - before) : 1;
            return known(
                    what,
                    between(run.moments.get(k - 1).seconds(), run.moments.get(k).seconds(), share),
                    between(run.low.get(k - 1), run.low.get(k), share),
                    between(run.high.get(k - 1), run.high.get(k), share));
        }
        return new Figure.Missing(what, never);
    }

    private static double between(double a, double b, double share) {
        return a + share * (b - a);
    }

    private static Figure known(String what, double seconds, double low, double high) {
        return new Figure.Known(seconds, Unit.SECOND, Math.min(seconds, low), Math.max(seconds, high), BASIS, what, "");
    }
}
