package galena.bench.reconcile;

import galena.build.fault.Fault;
import galena.build.fault.Faults;
import galena.build.folder.LogEntry;
import galena.build.folder.LogEntry.What;
import galena.build.folder.Overlay;
import galena.build.readings.ReadingModel;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;

/** Copies of a bench's build with one wrong part each, and what is made of their readings. */
final class WrongCopies {
    /** In deviations of a reading: a fault is heard where it moves one by more, all else typical. */
    private static final double HEARD = 10;

    private static final Set<Fault.Kind> KINDS = EnumSet.of(
            Fault.Kind.TEN_TIMES,
            Fault.Kind.A_TENTH,
            Fault.Kind.SWAPPED,
            Fault.Kind.WEAK,
            Fault.Kind.DEAD,
            Fault.Kind.SHORTED_TURN,
            Fault.Kind.REVERSED,
            Fault.Kind.MISSING);

    final SyntheticBench bench;
    final List<LogEntry> readings;
    final ReadingModel model;
    final List<Fault> faults;
    final Lineup lineup;
    private final double[] sound;

    WrongCopies(SyntheticBench bench, List<LogEntry> readings) throws Exception {
        this.bench = bench;
        this.readings = readings;
        model = bench.model(readings);
        faults = Faults.of(bench.build, Overlay.NONE);
        lineup = new Lineup(model, faults, readings.size());
        sound = model.at(new double[model.latents().size()], Optional.empty(), 0, readings.size())
                .orElseThrow()
                .values();
    }

    /**
     * A copy and what was made of it.
     *
     * @param outcome of all readings together
     */
    record Copy(Fault truth, Weighing.Outcome outcome) {
        /** Whether the true fault is among at most so many that are named as alike. */
        boolean isNamed(int most) {
            return outcome.faults().contains(truth) && outcome.faults().size() <= most;
        }

        /** Whether tolerances and strays were believed to explain it. */
        boolean isAbsorbed() {
            return outcome.faults().isEmpty() && outcome.wrong().isEmpty() && outcome.explained();
        }
    }

    /** Those of the kinds drawn that the bench's readings can be had of and hear. */
    List<Fault> heard() {
        return drawn().stream().filter(f -> hearing(f) > HEARD).toList();
    }

    /** Those that the readings can be had of but do not hear: nobody could find them. */
    List<Fault> unheard() {
        return drawn().stream()
                .filter(f -> lineup.typical(f).isPresent() && hearing(f) <= HEARD)
                .toList();
    }

    /** Those that stop the oscillation, at least under one of the circumstances where a carrier was to be read. */
    List<Fault> silent() {
        return drawn().stream().filter(f -> lineup.typical(f).isEmpty()).toList();
    }

    private List<Fault> drawn() {
        return faults.stream().filter(f -> KINDS.contains(f.kind())).toList();
    }

    private double hearing(Fault fault) {
        Optional<Lineup.Typical> typical = lineup.typical(fault);
        if (typical.isEmpty()) return 0;
        double most = 0;
        for (int k = 0; k < sound.length; k++) {
            LogEntry as =
                    SyntheticBench.with(readings.get(k), model.asked().get(k).shown(sound[k]));
            double sigma = Observation.of(as, model.asked().get(k)).sigma();
            most = Math.max(most, Math.abs(typical.get().values()[k] - sound[k]) / sigma);
        }
        return most;
    }

    /** The copy of a seed, its fault drawn evenly from some, everything unknown of it drawn too. */
    Copy copy(long seed, List<Fault> among) {
        Random random = new Random(seed);
        while (true) {
            Fault fault = among.get(random.nextInt(among.size()));
            Optional<List<LogEntry>> log = log(fault, random);
            if (log.isPresent()) return new Copy(fault, outcome(log.get()));
        }
    }

    /** Empty where the copy's readings cannot all be had. */
    private Optional<List<LogEntry>> log(Fault fault, Random random) {
        try {
            return bench.log(lineup.with(fault), readings, bench.truth(model, random), random);
        } catch (IllegalArgumentException unsolvable) {
            return Optional.empty();
        }
    }

    Weighing.Outcome outcome(List<LogEntry> log) {
        return new Weighing(lineup, SyntheticBench.observed(model, log))
                .outcome()
                .orElseThrow();
    }

    /** Those readings of a bench that a build can have which does not oscillate. */
    static List<LogEntry> atRest(List<LogEntry> readings) {
        return readings.stream()
                .filter(r -> r.what() == What.VOLTAGE || r.what() == What.AMPLITUDE || r.what() == What.CURRENT)
                .toList();
    }
}
