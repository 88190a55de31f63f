package galena.bench.reconcile;

import galena.build.readings.Latent;
import galena.build.readings.ReadingModel;
import galena.build.readings.ReadingModel.Readings;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;

/**
 * The explanations that readings leave, as a sample: also what is not quite normal about them, such as a stray that can't be below
 * nothing or a tolerance with ends. Each is the best explanation of readings that err once more, with its unknowns drawn once more:
 * where everything is straight that is an exact sample (D. S. Oliver, N. He and A. C. Reynolds, 5th European Conference on the
 * Mathematics of Oil Recovery, 1996; from memory), and {@link Mixing} spreads it as values with ends want it. Readings
 * are at first taken as straight in the parts' values about the best explanation, the values as bent along their scales; then
 * each explanation is put to the circuit itself once.
 */
final class Remaining {
    private static final int COUNT = 160;
    private static final int MOST_STEPS = 30;
    private static final int MOST_HALVINGS = 10;
    private static final double LONGEST = 1.5;
    private static final double STILL = 1e-3;

    private final ReadingModel model;
    private final Fit fit;
    private final List<Latent> latents;
    private final double[] values;
    private final double[][] byValue;
    private final double[] sigmas;
    private final Random random;

    /** Explanations, a row each, about each fit as many as its share of probability says. */
    static double[][] of(ReadingModel model, List<Fit> fits, long seed) {
        double[] shares = Modes.shares(fits);
        List<double[]> all = new ArrayList<>();
        for (int k = 0; k < shares.length; k++) {
            Remaining about = new Remaining(model, fits.get(k), seed + k);
            all.addAll(about.mixed((int) Math.round(shares[k] * COUNT)));
        }
        return all.toArray(double[][]::new);
    }

    private Remaining(ReadingModel model, Fit fit, long seed) {
        this.fit = fit;
        this.model = model;
        this.latents = model.latents();
        random = new Random(seed);
        double[] centre = fit.z();
        sigmas = fit.observed().stream().mapToDouble(Observation::sigma).toArray();
        values = new double[centre.length];
        byValue = new double[sigmas.length][centre.length];
        for (int j = 0; j < centre.length; j++) {
            values[j] = latents.get(j).bend().value(centre[j]);
            double slope = latents.get(j).bend().slope(centre[j]);
            for (int i = 0; i < sigmas.length; i++) byValue[i][j] = slope < 1e-9 ? 0 : fit.slopes()[i][j] / slope;
        }
    }

    private List<double[]> mixed(int count) {
        List<double[]> places = new ArrayList<>(), errors = new ArrayList<>();
        for (int n = 0; n < count; n++) {
            double[] z = one(), place = new double[z.length], error = new double[sigmas.length];
            for (int j = 0; j < z.length; j++) place[j] = latents.get(j).bend().value(z[j]);
            for (int i = 0; i < error.length; i++) {
                error[i] = fit.observed().get(i).value() - fit.values()[i];
                for (int j = 0; j < z.length; j++) error[i] -= byValue[i][j] * (place[j] - values[j]);
            }
            places.add(place);
            errors.add(error);
        }
        List<double[]> numbers = new ArrayList<>();
        for (double[] place : new Mixing(latents, byValue, sigmas, random).mixed(places, errors)) {
            double[] z = new double[place.length];
            for (int j = 0; j < z.length; j++) z[j] = latents.get(j).bend().number(place[j]);
            numbers.add(bent(z, place));
        }
        return numbers;
    }

    /**
     * Where the circuit is not straight: moved, along what the readings fix, to where it reads what it would read at these values if it
     * were.
     */
    private double[] bent(double[] z, double[] place) {
        int count = sigmas.length;
        Optional<Readings> here = model.at(z, Optional.of(fit.point().readings()), 0, count);
        if (here.isEmpty()) return z;
        double[] wanted = fit.values().clone();
        for (int i = 0; i < count; i++) {
            for (int j = 0; j < z.length; j++) wanted[i] += byValue[i][j] * (place[j] - values[j]);
            wanted[i] -= here.get().values()[i];
        }
        double[] weights = weights(z, wanted);
        double[][] slopes = slopes(z);
        double[] there = z.clone();
        for (int j = 0; j < z.length; j++) {
            double by = 0;
            for (int i = 0; i < count; i++) by += weights[i] * slopes[i][j];
            there[j] = latents.get(j).bend().moved(z[j], Math.max(-LONGEST, Math.min(LONGEST, by)));
        }
        return there;
    }

    private double[] one() {
        double[] prior = new double[values.length], read = new double[sigmas.length];
        for (int j = 0; j < prior.length; j++) prior[j] = random.nextGaussian();
        for (int i = 0; i < read.length; i++)
            read[i] = fit.observed().get(i).value() - fit.values()[i] + sigmas[i] * random.nextGaussian();
        double[] z = fit.z();
        double misfit = misfit(z, prior, read);
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] aim = aim(z, prior, read);
            double longest = 0;
            for (int j = 0; j < z.length; j++) longest = Math.max(longest, Math.abs(aim[j] - z[j]));
            double share = Math.min(1, LONGEST / longest);
            boolean better = false;
            for (int k = 0; k < MOST_HALVINGS && !better; k++, share /= 2) {
                double[] there = z.clone();
                for (int j = 0; j < z.length; j++)
                    there[j] = latents.get(j).bend().moved(z[j], share * (aim[j] - z[j]));
                double other = misfit(there, prior, read);
                if (other < misfit) {
                    better = true;
                    z = there;
                    misfit = other;
                }
            }
            if (!better || longest < STILL) break;
        }
        return z;
    }

    private double misfit(double[] z, double[] prior, double[] read) {
        double[] errors = errors(z, read);
        double sum = 0;
        for (int i = 0; i < errors.length; i++) sum += errors[i] * errors[i] / (sigmas[i] * sigmas[i]);
        for (int j = 0; j < z.length; j++) sum += (z[j] - prior[j]) * (z[j] - prior[j]);
        return sum;
    }

    /** What was read less what these numbers give. */
    private double[] errors(double[] z, double[] read) {
        double[] errors = read.clone();
        for (int j = 0; j < z.length; j++) {
            double moved = latents.get(j).bend().value(z[j]) - values[j];
            for (int i = 0; i < errors.length; i++) errors[i] -= byValue[i][j] * moved;
        }
        return errors;
    }

    private double[] aim(double[] z, double[] prior, double[] read) {
        double[][] slopes = slopes(z);
        double[] e = errors(z, read);
        for (int i = 0; i < e.length; i++) for (int j = 0; j < z.length; j++) e[i] += slopes[i][j] * (z[j] - prior[j]);
        double[] weights = weights(z, e), aim = prior.clone();
        for (int i = 0; i < e.length; i++) for (int j = 0; j < aim.length; j++) aim[j] += weights[i] * slopes[i][j];
        return aim;
    }

    private double[][] slopes(double[] z) {
        double[][] slopes = new double[sigmas.length][z.length];
        for (int j = 0; j < z.length; j++) {
            double bend = latents.get(j).bend().slope(z[j]);
            for (int i = 0; i < sigmas.length; i++) slopes[i][j] = byValue[i][j] * bend;
        }
        return slopes;
    }

    /** K⁻¹ e. */
    private double[] weights(double[] z, double[] e) {
        double[][] slopes = slopes(z), k = new double[e.length][e.length];
        for (int i = 0; i < e.length; i++) {
            for (int j = 0; j <= i; j++) k[i][j] = k[j][i] = Fit.dot(slopes[i], slopes[j]);
            k[i][i] += sigmas[i] * sigmas[i];
        }
        return new CholeskyDecomposition(MatrixUtils.createRealMatrix(k))
                .getSolver()
                .solve(new ArrayRealVector(e))
                .toArray();
    }
}
