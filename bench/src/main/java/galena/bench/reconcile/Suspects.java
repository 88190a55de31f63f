package galena.bench.reconcile;

import galena.build.fault.Fault;
import galena.build.folder.LogEntry.What;
import galena.build.readings.ReadingModel;
import galena.build.readings.ReadingModel.Readings;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The faults that could explain some readings. All are looked at under the circumstances
 * whose readings are explained worst, the more likely ones under all, the likeliest
 * are fitted in full; the first two looks take the slopes of the sound circuit.
 */
final class Suspects {
    /** What a look with the sound circuit's slopes may be off by, in the units of the readings. */
    private static final double SLACK_CARRIER = 2e-3;

    private static final double SLACK_LEVEL = 0.1;
    private static final double SLACK_DECIBEL = 3;

    /** Circumstances under which all faults are looked at. */
    private static final int LOOKED_AT = 2;

    private static final int LOOKED_AT_AGAIN = 20;
    private static final int FITTED = 6;
    private static final int FITTED_FULLY = 3;

    private final ReadingModel model;
    private final List<Observation> read;
    private final List<Fault> faults;
    private final Fit.Point sound;
    private final double expected;

    Suspects(ReadingModel model, List<Observation> read, List<Fault> faults, Fit.Point sound) {
        this.model = model;
        this.read = read;
        this.faults = faults;
        this.sound = sound;
        expected = middleCarrier();
    }

    /**
     * A fault with what the readings make of it.
     *
     * @param cost −2 ln of their probability
     */
    record Suspect(Fault fault, ReadingModel model, List<Fit> fits, double cost) {}

    private record Look(Fault fault, ReadingModel model, double cost) {}

    /** Those fitted in full, best first. */
    List<Suspect> likely() {
        List<int[]> runs = worstRuns();
        List<Look> first = faults.parallelStream()
                .flatMap(f -> look(f, runs.subList(0, Math.min(LOOKED_AT, runs.size()))).stream())
                .sorted(Comparator.comparingDouble(Look::cost))
                .limit(LOOKED_AT_AGAIN)
                .toList();
        List<Look> again = first.parallelStream()
                .flatMap(l -> look(l.fault, l.model, List.of(new int[] {0, read.size()})).stream())
                .sorted(Comparator.comparingDouble(Look::cost))
                .limit(FITTED)
                .toList();
        List<Suspect> fitted = new ArrayList<>();
        for (Look look : again) {
            Fit.point(look.model, new double[model.latents().size()], read.size())
                    .map(start -> Fit.from(look.model, read, start))
                    .ifPresent(fit -> fitted.add(new Suspect(look.fault, look.model, List.of(fit), fit.cost())));
        }
        fitted.sort(Comparator.comparingDouble(Suspect::cost));
        for (int k = 0; k < Math.min(FITTED_FULLY, fitted.size()); k++) fitted.set(k, inFull(fitted.get(k)));
        fitted.sort(Comparator.comparingDouble(Suspect::cost));
        return fitted;
    }

    private Suspect inFull(Suspect suspect) {
        List<Fit> fits = Modes.of(suspect.model, read, suspect.fits.get(0).point());
        return new Suspect(suspect.fault, suspect.model, fits, fits.get(0).cost());
    }

    /** With the errors that slopes of another circuit make. */
    private static List<Observation> loosely(List<Observation> read) {
        return read.stream()
                .map(o -> o.loosened(Math.hypot(o.sigma(), slack(o.asked().what()))))
                .toList();
    }

    private static double slack(What what) {
        return switch (what) {
            case CARRIER -> SLACK_CARRIER;
            case SECOND_HARMONIC, THIRD_HARMONIC -> SLACK_DECIBEL;
            default -> SLACK_LEVEL;
        };
    }

    private Optional<Look> look(Fault fault, List<int[]> runs) {
        try {
            return look(fault, model.changed(fault::in, expected), runs);
        } catch (IllegalArgumentException | ArithmeticException unsolvable) {
            return Optional.empty(); // a circuit that nobody built: with no solution it explains nothing
        }
    }

    private Optional<Look> look(Fault fault, ReadingModel changed, List<int[]> runs) {
        double cost = 0;
        for (int[] run : runs) {
            Optional<Readings> there = changed.at(sound.z(), Optional.empty(), run[0], run[1]);
            if (there.isEmpty()) return Optional.empty();
            cost += Fit.straight(
                            loosely(read.subList(run[0], run[1])),
                            new Fit.Point(sound.z(), there.get(), slopes(run[0], run[1])))
                    .straightCost();
        }
        return Optional.of(new Look(fault, changed, cost));
    }

    /** Hz, of the carriers read; 0 where none was. */
    private double middleCarrier() {
        double[] carriers = read.stream()
                .filter(o -> o.asked().what() == What.CARRIER)
                .mapToDouble(o -> o.shown(o.value()))
                .sorted()
                .toArray();
        return carriers.length == 0 ? 0 : carriers[carriers.length / 2];
    }

    /** From and to of the runs of readings under one circumstance each, those that the sound circuit explains worst first. */
    private List<int[]> worstRuns() {
        List<int[]> runs = new ArrayList<>();
        int from = 0;
        for (int k = 1; k <= read.size(); k++) {
            boolean ends = k == read.size()
                    || !read.get(k)
                            .asked()
                            .situation()
                            .equals(read.get(from).asked().situation());
            if (!ends) continue;
            runs.add(new int[] {from, k});
            from = k;
        }
        runs.sort(Comparator.comparingDouble(r -> -excess(r[0], r[1])));
        return runs;
    }

    private double excess(int first, int last) {
        return Fit.straight(read.subList(first, last), new Fit.Point(sound.z(), part(first, last), slopes(first, last)))
                        .straightMisfit()
                - (last - first);
    }

    private Readings part(int first, int last) {
        return new Readings(
                first,
                Arrays.copyOfRange(sound.readings().values(), first, last),
                sound.readings().periods());
    }

    private double[][] slopes(int first, int last) {
        return Arrays.copyOfRange(sound.slopes(), first, last);
    }
}
