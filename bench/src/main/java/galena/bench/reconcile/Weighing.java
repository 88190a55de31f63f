package galena.bench.reconcile;

import galena.build.fault.Fault;
import galena.build.readings.ReadingModel;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;

/**
 * Weighs what may be wrong: nothing, a reading, or a part. Each hypothesis is judged by the probability that it gives to all that was
 * read, all unknowns counted in, and by what it costs to be believed: one reading in a hundred is wrong, one build in twenty has a part
 * wrong, whichever (common practice). What is wrong is named only where it is twenty times as probable as nothing.
 */
final class Weighing {
    /** −2 ln of the odds against. */
    private static final double READING = 2 * Math.log(100);

    private static final double SLIP = 2 * Math.log(200);
    private static final double PART = 2 * Math.log(20);
    private static final double CLEARLY = 2 * Math.log(20);
    /** Parts a hundredth as probable as the best are still named with it: the approximation may be off by that. */
    private static final double AS_GOOD = 2 * Math.log(100);

    private static final double FITS = 0.95;
    private static final double HARDLY = 0.999;
    private static final double APART = 2.8;
    private static final double FAR_APART = 6;
    private static final double TEN_TIMES = 10;
    private static final int MOST_WRONG = 2;
    /** So many readings far from anything typical are no two slips. */
    private static final int MOST_FAR = 4;

    private static final int ROUGH_STEPS = 6;
    /** Of a rough misfit, to a reading. */
    private static final double HOPELESS = 10;

    private final ReadingModel model;
    private final List<Observation> read;
    private final Lineup lineup;

    Weighing(Lineup lineup, List<Observation> read) {
        this.model = lineup.sound();
        this.read = read;
        this.lineup = lineup;
    }

    /**
     * A reading thought wrong.
     *
     * @param index among the readings
     * @param slip what was probably meant, where something by name fits
     */
    record Wrong(int index, Optional<Slip> slip) {}

    /**
     * What was found.
     *
     * @param model of the circuit, with its fault if there is one
     * @param fits the explanations, best first
     * @param wrong readings thought wrong; beside faults, those that would do instead
     * @param suspects faults that explain the readings about alike well, best first; empty for none
     * @param gain in −2 ln of probability against nothing being wrong
     * @param explained whether what was read is to be expected from the best of it
     */
    record Outcome(
            ReadingModel model,
            List<Fit> fits,
            List<Wrong> wrong,
            List<Suspects.Suspect> suspects,
            double gain,
            boolean explained) {
        List<Fault> faults() {
            return suspects.stream().map(Suspects.Suspect::fault).toList();
        }
    }

    /** @return empty when the circuit as drawn does not oscillate under one of the circumstances */
    Optional<Outcome> outcome() {
        Optional<Fit.Point> start = Fit.point(model, new double[model.latents().size()], read.size());
        if (start.isEmpty()) return Optional.empty();
        Fit.Point begin = start.get();
        List<Integer> far = farApart(begin);
        Fit.Point careful = far.isEmpty()
                ? begin
                : Fit.from(model, Observation.roughly(loosened(begin, far)), begin, ROUGH_STEPS)
                        .point();
        List<Fit> plain = far.size() > MOST_FAR ? roughly(careful) : Modes.of(model, read, careful);
        Fit best = plain.get(0);
        if (isOrdinary(best)) {
            return Optional.of(new Outcome(model, plain, List.of(), List.of(), 0, true));
        }
        List<Suspects.Suspect> likely = new Suspects(lineup, read).likely();
        double byParts = likely.isEmpty()
                ? Double.NEGATIVE_INFINITY
                : best.cost()
                        - likely.get(0).cost()
                        - PART
                        - 2 * Math.log(lineup.faults().size());
        boolean byPart = !likely.isEmpty() && isProbable(likely.get(0).fits().get(0), HARDLY);
        Outcome wrong = byPart && far.size() > MOST_FAR
                ? new Outcome(model, plain, List.of(), List.of(), 0, false)
                : readings(begin, far.isEmpty() ? best.point() : careful, plain);
        if (Math.max(wrong.gain, byParts) < CLEARLY) {
            return Optional.of(new Outcome(model, plain, List.of(), List.of(), 0, isProbable(best, HARDLY)));
        }
        return Optional.of(wrong.gain > byParts + AS_GOOD ? wrong : parts(likely, byParts, wrong));
    }

    /** Where much lies far off: if it does so even roughly, finer steps are spared. */
    private List<Fit> roughly(Fit.Point near) {
        Fit rough = Fit.from(model, Observation.roughly(read), near, ROUGH_STEPS);
        return rough.misfit() > HOPELESS * read.size()
                ? List.of(Fit.from(model, read, rough.point(), 0))
                : Modes.of(model, read, rough.point());
    }

    /** A reading is thought wrong only where no part does nearly as well; else it is named beside the parts. */
    private Outcome parts(List<Suspects.Suspect> likely, double gain, Outcome wrong) {
        double least = likely.get(0).cost();
        List<Suspects.Suspect> named =
                likely.stream().filter(s -> s.cost() < least + AS_GOOD).toList();
        List<Fit> fits = likely.get(0).fits();
        return new Outcome(
                likely.get(0).model(),
                fits,
                wrong.gain > gain - AS_GOOD ? wrong.wrong : List.of(),
                named,
                gain,
                isProbable(fits.get(0), HARDLY));
    }

    private List<Integer> farApart(Fit.Point at) {
        List<Integer> far = new ArrayList<>();
        for (int i = 0; i < read.size(); i++) {
            double spread = Math.hypot(
                    Math.sqrt(Fit.dot(at.slopes()[i], at.slopes()[i])),
                    read.get(i).sigma());
            if (Math.abs(read.get(i).value() - at.readings().values()[i]) > FAR_APART * spread) far.add(i);
        }
        return far;
    }

    private List<Observation> loosened(Fit.Point at, List<Integer> these) {
        List<Observation> loose = new ArrayList<>(read);
        for (int i : these) {
            double error = Math.abs(read.get(i).value() - at.readings().values()[i]);
            loose.set(i, read.get(i).loosened(TEN_TIMES * error));
        }
        return loose;
    }

    private static boolean isOrdinary(Fit fit) {
        return isProbable(fit, FITS)
                && worst(fit, List.of()).map(w -> w[1] < APART).orElse(true);
    }

    private static boolean isProbable(Fit fit, double quantile) {
        int free = fit.observed().size();
        return fit.misfit() < new ChiSquaredDistribution(free).inverseCumulativeProbability(quantile);
    }

    /** {index, how many deviations} of the reading that lies furthest from what the others say. */
    private static Optional<double[]> worst(Fit fit, List<Wrong> but) {
        double[] worst = {-1, 0};
        for (int i = 0; i < fit.observed().size(); i++) {
            int index = i;
            if (but.stream().anyMatch(w -> w.index == index)) continue;
            double[] others = fit.withoutReading(i);
            double apart = Math.abs(fit.observed().get(i).value() - others[0]) / others[1];
            if (apart > worst[1]) worst = new double[] {i, apart};
        }
        return worst[0] < 0 ? Optional.empty() : Optional.of(worst);
    }

    /** Readings taken out one after the other, as long as each pays for itself. */
    private Outcome readings(Fit.Point begin, Fit.Point near, List<Fit> plain) {
        List<Observation> now = new ArrayList<>(read);
        List<Wrong> wrong = new ArrayList<>();
        List<Fit> fits = plain;
        List<Integer> far = farApart(begin);
        double paid = 0;
        while (wrong.size() < MOST_WRONG && read.size() - wrong.size() > 2) {
            Optional<Taken> taken = Optional.empty();
            for (int i : candidates(fits.get(0), wrong, far)) {
                Optional<Taken> other = taken(near, now, i);
                if (other.isPresent()
                        && (taken.isEmpty() || other.get().total() < taken.get().total())) taken = other;
            }
            if (taken.isEmpty() || taken.get().total() > fits.get(0).cost() - CLEARLY) break;
            Taken best = taken.get();
            wrong.add(best.wrong);
            now = new ArrayList<>(best.fit.observed());
            fits = List.of(best.fit);
            paid += best.penalty;
            far.remove((Integer) best.wrong.index);
        }
        if (wrong.isEmpty()) return new Outcome(model, plain, List.of(), List.of(), 0, false);
        fits = Modes.of(model, now, fits.get(0).point());
        double gain = plain.get(0).cost() - fits.get(0).cost() - paid;
        return new Outcome(model, fits, wrong, List.of(), gain, isProbable(fits.get(0), HARDLY));
    }

    private static List<Integer> candidates(Fit fit, List<Wrong> wrong, List<Integer> far) {
        List<double[]> byDistance = new ArrayList<>();
        for (int i = 0; i < fit.observed().size(); i++) {
            int index = i;
            if (wrong.stream().anyMatch(w -> w.index == index)) continue;
            double[] others = fit.withoutReading(i);
            byDistance.add(new double[] {i, Math.abs(fit.observed().get(i).value() - others[0]) / others[1]});
        }
        byDistance.sort(Comparator.comparingDouble(d -> -d[1]));
        List<Integer> candidates = new ArrayList<>(far.size() > MOST_FAR ? List.of() : far);
        for (double[] d : byDistance.subList(0, Math.min(3, byDistance.size()))) {
            if (!candidates.contains((int) d[0])) candidates.add((int) d[0]);
        }
        return candidates;
    }

    /** A reading taken as wrong, and what that costs beyond the fit. */
    private record Taken(Wrong wrong, Fit fit, double penalty) {
        double total() {
            return fit.cost() + penalty;
        }
    }

    private Optional<Taken> taken(Fit.Point near, List<Observation> now, int index) {
        List<Observation> loose = new ArrayList<>(now);
        Observation own = now.get(index);
        loose.set(index, own.loosened(1e3 * Math.max(1, own.sigma())));
        Fit without = Fit.from(model, loose, near);
        double[] others = without.withoutReading(index);
        double spread = Math.hypot(
                Math.sqrt(Math.max(0, others[1] * others[1] - Math.pow(1e3 * Math.max(1, own.sigma()), 2))),
                own.sigma());
        double error = own.value() - without.values()[index];
        Taken best = anyError(without, loose, index, Math.max(TEN_TIMES * own.sigma(), Math.abs(error)));
        for (Slip slip : Slip.of(own.asked().what())) {
            Observation meant = own.times(slip.factor());
            if (Math.abs(meant.value() - without.values()[index]) > 5 * Math.max(spread, own.sigma())) continue;
            List<Observation> corrected = new ArrayList<>(now);
            corrected.set(index, meant);
            Fit fit = Fit.from(model, corrected, without.point());
            Taken other = new Taken(new Wrong(index, Optional.of(slip)), fit, SLIP);
            if (other.total() < best.total()) best = other;
        }
        return Optional.of(best);
    }

    private Taken anyError(Fit without, List<Observation> loose, int index, double error) {
        List<Observation> wide = new ArrayList<>(loose);
        wide.set(index, loose.get(index).loosened(error));
        Fit fit = Fit.from(model, wide, without.point());
        return new Taken(new Wrong(index, Optional.empty()), fit, READING);
    }
}
