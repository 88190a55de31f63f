package galena.bench.reconcile;

import galena.build.fault.Fault;
import galena.build.readings.ReadingModel;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The faults that could explain some readings. All are weighed as if everything were straight about their own typical build, with
 * an error for what is not; the more likely ones are followed a step or two, the likeliest are fitted in full.
 */
final class Suspects {
    /** Of how far a reading is moved: how wrong slopes of the typical build may be about it. */
    private static final double BENT = 0.3;
    /** So often a reading that stays off is taken as less exact, as where slopes say nothing of it. */
    private static final int PASSES = 3;

    private static final int STEPPED = 14;
    private static final int STEPPED_MORE = 40;
    private static final int STEPS = 4;
    private static final int FITTED = 6;
    private static final int FITTED_FULLY = 4;
    private static final int MOST_STEPS = 12;
    private static final double FAR_BEHIND = 200;
    /** Of a misfit, to a reading. */
    private static final double VAST = 300;
    /** In −2 ln of probability: who lies further behind the best is not looked at again. */
    private static final double BEHIND = 50;

    /** Of a misfit, to a reading: where the best explains them worse, others are followed too. */
    private static final double HARDLY = 1.3;

    private final Lineup lineup;
    private final List<Observation> read;

    Suspects(Lineup lineup, List<Observation> read) {
        this.lineup = lineup;
        this.read = read;
    }

    /**
     * A fault with what the readings make of it.
     *
     * @param cost −2 ln of their probability
     */
    record Suspect(Fault fault, ReadingModel model, List<Fit> fits, double cost) {}

    private record Look(Fault fault, double cost) {}

    /** Those fitted in full, best first. */
    List<Suspect> likely() {
        List<Look> looks = looks();
        int first = Math.min(STEPPED, looks.size()), more = Math.min(STEPPED_MORE, looks.size());
        List<Suspect> fitted = new ArrayList<>(fitted(looks.subList(0, first)));
        inFull(fitted);
        if (!isExplained(fitted) && more > first) {
            fitted.addAll(fitted(looks.subList(first, more)));
            inFull(fitted);
        }
        return fitted;
    }

    private boolean isExplained(List<Suspect> fitted) {
        return !fitted.isEmpty() && fitted.get(0).fits.get(0).misfit() < HARDLY * read.size();
    }

    /** The best is looked at on all sides of its resonances; the next ones too where it does not explain the readings. Sorts. */
    private void inFull(List<Suspect> fitted) {
        fitted.sort(Comparator.comparingDouble(Suspect::cost));
        for (Suspect s : List.copyOf(fitted.subList(0, Math.min(FITTED_FULLY, fitted.size())))) {
            fitted.set(
                    fitted.indexOf(s),
                    of(s, Modes.of(s.model, read, s.fits.get(0).point())));
            fitted.sort(Comparator.comparingDouble(Suspect::cost));
            if (isExplained(fitted)) break;
        }
    }

    private List<Suspect> fitted(List<Look> looks) {
        List<Suspect> stepped = looks.parallelStream()
                .flatMap(look -> stepped(look.fault).stream())
                .sorted(Comparator.comparingDouble(Suspect::cost))
                .toList();
        List<Suspect> fitted = new ArrayList<>();
        for (Suspect s : stepped) {
            if (fitted.size() == FITTED) break;
            fitted.add(of(s, List.of(Fit.from(s.model, read, s.fits.get(0).point(), MOST_STEPS, interest(fitted)))));
        }
        fitted.sort(Comparator.comparingDouble(Suspect::cost));
        for (int k = 1; k < fitted.size() && fitted.get(k).cost < fitted.get(0).cost + BEHIND; k++)
            fitted.set(k, fromBest(fitted.get(k), fitted.get(0).fits.get(0).z()));
        fitted.sort(Comparator.comparingDouble(Suspect::cost));
        return fitted;
    }

    /** A misfit so far above the best's is nobody's that will be named. */
    private double interest(List<Suspect> fitted) {
        return fitted.stream().mapToDouble(s -> s.fits.get(0).misfit()).min().orElse(VAST * read.size()) + FAR_BEHIND;
    }

    /** Fitted once more from where the best came to: the same build, but for the fault. */
    private Suspect fromBest(Suspect s, double[] z) {
        return Fit.point(s.model, z, read.size())
                .map(start -> Fit.from(s.model, read, start, MOST_STEPS, interest(List.of(s))))
                .filter(fit -> fit.cost() < s.cost)
                .map(fit -> of(s, List.of(fit)))
                .orElse(s);
    }

    private static Suspect of(Suspect before, List<Fit> fits) {
        return new Suspect(before.fault, before.model, fits, fits.get(0).cost());
    }

    /** All that the readings can be had of and hear, best first. */
    private List<Look> looks() {
        return lineup.faults().parallelStream()
                .filter(f -> lineup.isHeard(f, read))
                .flatMap(f -> lineup.typical(f).map(t -> new Look(f, straight(t))).stream())
                .sorted(Comparator.comparingDouble(Look::cost))
                .toList();
    }

    private double straight(Lineup.Typical typical) {
        double[] off = new double[read.size()];
        List<Observation> loose = Observation.roughly(read);
        for (int pass = 0; pass < PASSES; pass++) {
            double[] moved = Fit.straightMove(loose, typical.values(), typical.slopes());
            for (int i = 0; i < off.length; i++)
                off[i] = Math.hypot(BENT * moved[i], read.get(i).value() - typical.values()[i] - moved[i]);
            loose = new ArrayList<>();
            List<Observation> rough = Observation.roughly(read);
            for (int i = 0; i < off.length; i++)
                loose.add(rough.get(i).loosened(Math.hypot(rough.get(i).sigma(), off[i])));
        }
        return Fit.straightCost(loose, typical.values(), typical.slopes());
    }

    /** With readings taken as less exact than they are: a few steps then come near enough. */
    private Optional<Suspect> stepped(Fault fault) {
        ReadingModel model = lineup.with(fault);
        List<Observation> loose = Observation.roughly(read);
        return Fit.point(model, new double[model.latents().size()], read.size())
                .map(start -> Fit.from(model, loose, start, STEPS))
                .map(fit -> new Suspect(fault, model, List.of(fit), fit.cost()));
    }
}
