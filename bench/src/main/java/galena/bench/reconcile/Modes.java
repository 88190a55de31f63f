package galena.bench.reconcile;

import galena.build.folder.LogEntry.What;
import galena.build.quantity.Unit;
import galena.build.readings.Latent;
import galena.build.readings.ReadingModel;
import galena.build.readings.ReadingModel.Readings;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * All explanations that fit, where there is more than one: a level can be met on either side of a resonance, or of the place where two
 * ways into a net cancel. From the explanation found first, each level is followed along the one direction in which the other readings
 * stay as they are; where it comes back to what was read, another fit is begun.
 */
final class Modes {
    private static final double FARTHEST = 4.5;
    private static final double STRIDE = 0.75;
    private static final double BESIDE = 1.5;
    private static final double SAME = 0.5;
    /** In −2 ln of probability: what lies further behind the best is left out. */
    private static final double BEHIND = 9;

    /** Of a misfit, to a reading: so much is not made good on the other side of a resonance. */
    private static final double HOPELESS = 20;

    private static final int MOST_STARTS = 4;

    private final ReadingModel model;
    private final List<Observation> observed;
    private final List<Fit> found = new ArrayList<>();
    private int starts;

    private Modes(ReadingModel model, List<Observation> observed) {
        this.model = model;
        this.observed = observed;
    }

    /** The explanations, best first, those far behind left out. */
    static List<Fit> of(ReadingModel model, List<Observation> observed, Fit.Point start) {
        Modes modes = new Modes(model, observed);
        modes.found.add(Fit.from(model, observed, start));
        if (modes.found.get(0).misfit() < HOPELESS * observed.size()) modes.besideResonance(start);
        modes.found.sort(Comparator.comparingDouble(Fit::cost));
        if (modes.found.get(0).misfit() < HOPELESS * observed.size()) modes.lookBeyond(modes.found.get(0));
        modes.found.sort(Comparator.comparingDouble(Fit::cost));
        double best = modes.found.get(0).cost();
        return modes.found.stream().filter(f -> f.cost() < best + BEHIND).toList();
    }

    /** How probable each of some explanations is, if one of them is right. */
    static double[] shares(List<Fit> fits) {
        double best = fits.get(0).cost(), sum = 0;
        double[] shares = new double[fits.size()];
        for (int k = 0; k < shares.length; k++) {
            shares[k] = Math.exp((best - fits.get(k).cost()) / 2);
            sum += shares[k];
        }
        for (int k = 0; k < shares.length; k++) shares[k] /= sum;
        return shares;
    }

    /** From either side of every resonance but that which makes the carrier. */
    private void besideResonance(Fit.Point start) {
        List<Latent> latents = model.latents();
        List<Integer> coils = IntStream.range(0, latents.size())
                .filter(k -> latents.get(k).unit() == Unit.HENRY)
                .boxed()
                .sorted(Comparator.comparingDouble(k -> -pull(start, k)))
                .toList();
        for (int coil : coils.subList(Math.min(1, coils.size()), Math.min(3, coils.size()))) {
            for (int sign = -1; sign <= 1; sign += 2) {
                double[] there = start.z().clone();
                there[coil] += sign * BESIDE;
                begin(there, start.readings());
            }
        }
    }

    /** How much a number moves the carriers. */
    private double pull(Fit.Point at, int number) {
        double most = 0;
        for (int i = 0; i < observed.size(); i++)
            if (observed.get(i).asked().what() == What.CARRIER) most = Math.max(most, Math.abs(at.slopes()[i][number]));
        return most;
    }

    private void lookBeyond(Fit from) {
        for (int i = 0; i < observed.size(); i++) {
            switch (observed.get(i).asked().what()) {
                case AMPLITUDE, SECOND_HARMONIC, THIRD_HARMONIC -> along(from, i);
                default -> {
                    // straight enough to be met in one place only
                }
            }
        }
    }

    private void along(Fit from, int reading) {
        double[] z = from.z(), direction = from.left().operate(from.slopes()[reading]);
        double length = Math.sqrt(Fit.dot(direction, direction));
        if (length * length < Math.pow(observed.get(reading).sigma(), 2)) return;
        for (int sign = -1; sign <= 1; sign += 2) {
            Optional<Readings> near = Optional.of(from.point().readings());
            double last = Double.NaN;
            for (double t = STRIDE; t <= FARTHEST; t += STRIDE) {
                double[] there = shifted(z, direction, sign * t / length);
                Optional<Readings> readings = model.at(there, near, reading, reading + 1);
                if (readings.isEmpty()) break;
                near = readings;
                double error =
                        readings.get().values()[0] - observed.get(reading).value();
                if (last * error < 0) {
                    double share = last / (last - error);
                    begin(
                            shifted(z, direction, sign * (t - STRIDE + share * STRIDE) / length),
                            from.point().readings());
                    break;
                }
                last = error;
            }
        }
    }

    private static double[] shifted(double[] z, double[] direction, double by) {
        double[] there = z.clone();
        for (int k = 0; k < there.length; k++) there[k] += by * direction[k];
        return there;
    }

    private void begin(double[] there, Readings near) {
        if (starts++ >= MOST_STARTS) return;
        Optional<Readings> readings = model.at(there, Optional.of(near), 0, observed.size());
        if (readings.isEmpty()) return;
        Fit fit = Fit.from(model, observed, new Fit.Point(there, readings.get(), model.slopes(readings.get(), there)));
        boolean known = found.stream().anyMatch(other -> distance(other.z(), fit.z()) < SAME);
        if (!known) found.add(fit);
    }

    private static double distance(double[] one, double[] other) {
        double sum = 0;
        for (int k = 0; k < one.length; k++) sum += (one[k] - other[k]) * (one[k] - other[k]);
        return Math.sqrt(sum);
    }
}
