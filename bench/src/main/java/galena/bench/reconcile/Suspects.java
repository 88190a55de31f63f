package galena.bench.reconcile;

import galena.build.fault.Fault;
import galena.build.folder.LogEntry.What;
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

    private static final double SLACK_CARRIER = 1e-3;
    private static final double SLACK_LEVEL = 0.03;
    private static final double SLACK_DECIBEL = 1;

    private static final int STEPPED = 36;
    private static final int STEPS = 5;
    private static final int FITTED = 8;
    private static final int FITTED_FULLY = 3;
    /** In −2 ln of probability: who lies further behind the best is not looked at again. */
    private static final double BEHIND = 60;

    /** Of a misfit, to a reading: so badly the best may explain them before all the others are followed too. */
    private static final double UNEXPLAINED = 3;

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
        List<Suspect> fitted = fitted(looks.subList(0, Math.min(STEPPED, looks.size())));
        boolean explained = !fitted.isEmpty() && misfit(fitted.get(0)) < UNEXPLAINED * read.size();
        if (!explained && looks.size() > STEPPED) {
            fitted.addAll(fitted(looks.subList(STEPPED, looks.size())));
            fitted.sort(Comparator.comparingDouble(Suspect::cost));
        }
        for (int k = 0; k < Math.min(FITTED_FULLY, fitted.size()); k++) {
            Suspect s = fitted.get(k);
            fitted.set(k, of(s, Modes.of(s.model, read, s.fits.get(0).point())));
        }
        fitted.sort(Comparator.comparingDouble(Suspect::cost));
        return fitted;
    }

    private static double misfit(Suspect s) {
        return s.fits.get(0).misfit();
    }

    private List<Suspect> fitted(List<Look> looks) {
        List<Suspect> stepped = looks.parallelStream()
                .flatMap(look -> stepped(look.fault).stream())
                .sorted(Comparator.comparingDouble(Suspect::cost))
                .toList();
        List<Suspect> fitted = new ArrayList<>();
        for (Suspect s : stepped) {
            if (fitted.size() == FITTED || s.cost > stepped.get(0).cost + BEHIND) break;
            fitted.add(of(s, List.of(Fit.from(s.model, read, s.fits.get(0).point()))));
        }
        fitted.sort(Comparator.comparingDouble(Suspect::cost));
        for (int k = 1; k < fitted.size(); k++)
            fitted.set(k, fromBest(fitted.get(k), fitted.get(0).fits.get(0).z()));
        fitted.sort(Comparator.comparingDouble(Suspect::cost));
        return fitted;
    }

    /** Fitted once more from where the best came to: the same build, but for the fault. */
    private Suspect fromBest(Suspect s, double[] z) {
        return Fit.point(s.model, z, read.size())
                .map(start -> Fit.from(s.model, read, start))
                .filter(fit -> fit.cost() < s.cost)
                .map(fit -> of(s, List.of(fit)))
                .orElse(s);
    }

    private static Suspect of(Suspect before, List<Fit> fits) {
        return new Suspect(before.fault, before.model, fits, fits.get(0).cost());
    }

    /** All of whom the readings could be had, best first. */
    private List<Look> looks() {
        return lineup.faults().parallelStream()
                .flatMap(f -> lineup.typical(f).map(t -> new Look(f, straight(t))).stream())
                .sorted(Comparator.comparingDouble(Look::cost))
                .toList();
    }

    private double straight(Lineup.Typical typical) {
        double[] off = new double[read.size()];
        List<Observation> loose = loosened(i -> slack(read.get(i).asked().what()));
        for (int pass = 0; pass < PASSES; pass++) {
            double[] moved = Fit.straightMove(loose, typical.values(), typical.slopes());
            for (int i = 0; i < off.length; i++)
                off[i] = Math.hypot(BENT * moved[i], read.get(i).value() - typical.values()[i] - moved[i]);
            loose = loosened(i -> Math.hypot(slack(read.get(i).asked().what()), off[i]));
        }
        return Fit.straightCost(loose, typical.values(), typical.slopes());
    }

    private interface Slack {
        double of(int reading);
    }

    private List<Observation> loosened(Slack slack) {
        List<Observation> loose = new ArrayList<>();
        for (int i = 0; i < read.size(); i++)
            loose.add(read.get(i).loosened(Math.hypot(read.get(i).sigma(), slack.of(i))));
        return loose;
    }

    private static double slack(What what) {
        return switch (what) {
            case CARRIER -> SLACK_CARRIER;
            case SECOND_HARMONIC, THIRD_HARMONIC -> SLACK_DECIBEL;
            default -> SLACK_LEVEL;
        };
    }

    /** With readings taken as less exact than they are: a few steps then come near enough. */
    private Optional<Suspect> stepped(Fault fault) {
        ReadingModel model = lineup.with(fault);
        List<Observation> loose = loosened(i -> slack(read.get(i).asked().what()));
        return Fit.point(model, new double[model.latents().size()], read.size())
                .map(start -> Fit.from(model, loose, start, STEPS))
                .map(fit -> new Suspect(fault, model, List.of(fit), fit.cost()));
    }
}
