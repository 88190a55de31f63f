package galena.bench.reconcile;

import galena.bench.reconcile.Reconciliation.Left;
import galena.bench.reconcile.Reconciliation.Standing;
import galena.build.figure.Figure;
import galena.build.folder.Calibration;
import galena.build.readings.Latent;
import galena.build.readings.Latent.Kind;
import galena.build.readings.ReadingModel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/** What is left open by the readings, from a sample of the explanations that remain, and from one before any reading. */
final class Explanations {
    private static final double FOUND = 0.7;
    private static final double NARROWED = 0.9;
    private static final double TAIL = 0.025;
    private static final int BEFORE = 400;

    /** A combination of unknowns is known whose deviation is below this share of what it was. */
    private static final double KNOWN = 0.35;
    /** A part in such a combination. */
    private static final double TAKES_PART = 0.35;
    /** Alone it is not known. */
    private static final double OPEN = 0.45;

    private static final int MOST_TOGETHER = 3;
    private static final String BASIS = "reconciled, 95 %";

    private final ReadingModel model;
    private final List<Latent> latents;
    private final double[][] after;
    private final double[][] before;
    private final RealMatrix left;
    private final Fit fit;

    Explanations(ReadingModel model, List<Fit> fits, long seed) {
        this.model = model;
        latents = model.latents();
        fit = fits.get(0);
        left = fit.left();
        after = Remaining.of(model, fits, seed);
        Random random = new Random(seed);
        before = new double[BEFORE][latents.size()];
        for (double[] row : before) for (int j = 0; j < row.length; j++) row[j] = random.nextGaussian();
    }

    /** Covariance about the best explanation. */
    RealMatrix left() {
        return left;
    }

    List<Latent> latents() {
        return latents;
    }

    ReadingModel model() {
        return model;
    }

    private boolean isShown(int j) {
        return latents.get(j).kind() != Kind.CIRCUMSTANCE && model.has(j);
    }

    List<Left> unknowns() {
        List<Left> all = new ArrayList<>();
        for (int j = 0; j < latents.size(); j++) if (isShown(j)) all.add(unknown(j));
        return all;
    }

    /** One unknown, before and after. */
    Left unknown(int j) {
        ToDoubleFunction<double[]> value = z -> latents.get(j).bend().value(z[j]);
        double share = width(sorted(after, value)) / width(sorted(before, value));
        Standing standing =
                share <= FOUND ? Standing.FOUND : share <= NARROWED ? Standing.NARROWED : Standing.AS_BEFORE;
        return new Left(
                figure(before, j, "before any reading, 95 %"), figure(after, j, BASIS), Math.min(1, share), standing);
    }

    private Figure.Known figure(double[][] rows, int j, String basis) {
        Latent latent = latents.get(j);
        return figure(sorted(rows, z -> model.shown(j, z)), latent, basis);
    }

    private static Figure.Known figure(double[] sorted, Latent latent, String basis) {
        return new Figure.Known(
                at(sorted, 0.5), latent.unit(), at(sorted, TAIL), at(sorted, 1 - TAIL), basis, latent.shown(), "");
    }

    /** {middle, low, high} of something of the explanations. */
    double[] interval(ToDoubleFunction<double[]> of) {
        double[] sorted = sorted(after, of);
        return new double[] {at(sorted, 0.5), at(sorted, TAIL), at(sorted, 1 - TAIL)};
    }

    private static double[] sorted(double[][] rows, ToDoubleFunction<double[]> of) {
        return Arrays.stream(rows).mapToDouble(of).sorted().toArray();
    }

    private static double width(double[] sorted) {
        return at(sorted, 1 - TAIL) - at(sorted, TAIL);
    }

    static double at(double[] sorted, double share) {
        double place = share * (sorted.length + 1) - 1;
        int below = (int) Math.max(0, Math.min(sorted.length - 2, Math.floor(place)));
        double part = Math.max(0, Math.min(1, place - below));
        return sorted[below] + part * (sorted[below + 1] - sorted[below]);
    }

    /** Combinations that are known though none of their parts is alone. */
    List<String> together() {
        int[] shown = java.util.stream.IntStream.range(0, latents.size())
                .filter(this::isShown)
                .toArray();
        EigenDecompositionSymmetric directions = new EigenDecompositionSymmetric(
                MatrixUtils.createRealMatrix(left.getSubMatrix(shown, shown).getData()));
        List<String> sentences = new ArrayList<>();
        for (int k = shown.length - 1; k >= 0 && sentences.size() < MOST_TOGETHER; k--) {
            if (directions.getEigenvalue(k) > KNOWN * KNOWN) continue;
            double[] direction = directions.getEigenvector(k).toArray();
            List<Integer> parts = new ArrayList<>();
            for (int j = 0; j < shown.length; j++) {
                boolean open = left.getEntry(shown[j], shown[j]) > OPEN * OPEN;
                if (open && Math.abs(direction[j]) > TAKES_PART) parts.add(j);
            }
            if (parts.size() < 2) continue;
            parts.sort(Comparator.comparingDouble(j -> -Math.abs(direction[j])));
            List<String> names =
                    parts.stream().map(j -> latents.get(shown[j]).shown()).toList();
            sentences.add(
                    Telling.list(names) + " can't be told apart by these readings: only together are they known.");
        }
        return sentences.stream().distinct().toList();
    }

    /** What is worth keeping: middle and covariance of every value of the build that the readings reach. */
    Calibration calibration(String day) {
        List<Integer> kept = new ArrayList<>();
        for (int j = 0; j < latents.size(); j++) if (isShown(j) && isReached(j)) kept.add(j);
        double[][] values = new double[after.length][kept.size()];
        for (int row = 0; row < values.length; row++)
            for (int k = 0; k < kept.size(); k++) {
                int j = kept.get(k);
                values[row][k] = latents.get(j).bend().value(after[row][j]);
            }
        double[] middle = new double[kept.size()];
        for (double[] row : values) for (int k = 0; k < middle.length; k++) middle[k] += row[k] / values.length;
        double[][] triangle = Triangle.of(values, middle);
        List<Calibration.Known> unknowns = new ArrayList<>();
        for (int k = 0; k < middle.length; k++) {
            List<Double> row = new ArrayList<>();
            for (int i = 0; i <= k; i++) row.add(triangle[k][i]);
            Latent latent = latents.get(kept.get(k));
            unknowns.add(new Calibration.Known(latent.key(), latent.between().orElse(List.of()), middle[k], row));
        }
        return new Calibration(day, Map.of(), List.of(), List.of(), unknowns);
    }

    /** Whether it moves any reading by a fair part of that reading's error. */
    private boolean isReached(int j) {
        for (int i = 0; i < fit.observed().size(); i++)
            if (Math.abs(fit.slopes()[i][j]) > 0.25 * fit.observed().get(i).sigma()) return true;
        return false;
    }
}
