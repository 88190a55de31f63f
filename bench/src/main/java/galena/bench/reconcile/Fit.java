package galena.bench.reconcile;

import galena.build.readings.Latent;
import galena.build.readings.ReadingModel;
import galena.build.readings.ReadingModel.Readings;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * The most probable explanation of some readings, and what is straight about it there. With prior N(0, I) on the numbers z, readings y
 * of errors S and slopes J, everything is told by K = J Jᵀ + S, which has a row for each reading however many unknowns there are: the
 * Gauss-Newton step goes to Jᵀ K⁻¹ (y − f + J z), and what is left of the numbers has the covariance I − Jᵀ K⁻¹ J.
 */
final class Fit {
    private static final int MOST_STEPS = 12;
    private static final int MOST_HALVINGS = 5;
    /** Of a number in one step: further than this the slopes say nothing. */
    private static final double LONGEST = 2;

    private static final int PATIENCE = 5;
    /** Of a misfit, to a reading, after so many steps: there is nothing to be found here. */
    private static final double HOPELESS = 300;

    private static final double STILL = 0.02;
    /** Gain in the sum of squares that is worth another step. */
    private static final double GAIN = 0.02;

    private final List<Observation> observed;
    private final double[] z;
    private final Readings readings;
    private final double[][] slopes;
    private final double misfit;
    private final RealMatrix inverse;
    private final double logDeterminant;

    private Fit(List<Observation> observed, double[] z, Readings readings, double[][] slopes) {
        this.observed = observed;
        this.z = z;
        this.readings = readings;
        this.slopes = slopes;
        this.misfit = misfit(observed, z, readings);
        CholeskyDecomposition k = new CholeskyDecomposition(MatrixUtils.createRealMatrix(covariance(observed, slopes)));
        inverse = k.getSolver().getInverse();
        double sum = 0;
        for (int i = 0; i < observed.size(); i++) sum += 2 * Math.log(k.getL().getEntry(i, i));
        logDeterminant = sum;
    }

    /** Where a fit may start: numbers with their readings and slopes. */
    record Point(double[] z, Readings readings, double[][] slopes) {}

    /** The point of these numbers; empty when one of the circuits does not oscillate. */
    static Optional<Point> point(ReadingModel model, double[] z, int count) {
        return model.at(z, Optional.empty(), 0, count).map(r -> new Point(z, r, model.slopes(r, z)));
    }

    /** Fits from a point. */
    static Fit from(ReadingModel model, List<Observation> observed, Point start) {
        return from(model, observed, start, MOST_STEPS);
    }

    /** The same in a few steps at most. */
    static Fit from(ReadingModel model, List<Observation> observed, Point start, int most) {
        return from(model, observed, start, most, HOPELESS * observed.size());
    }

    /** The same, given up where after a few steps more is missed than would be of interest. */
    static Fit from(ReadingModel model, List<Observation> observed, Point start, int most, double interest) {
        Point now = start;
        boolean fresh = true; // slopes serve two steps: they cost six times what readings do
        for (int step = 0; step < most; step++) {
            double[] aim = aim(observed, now);
            double before = misfit(observed, now.z, now.readings), longest = longest(now.z, aim);
            Optional<Point> better = better(model, observed, now, aim);
            if (better.isEmpty() && fresh) break;
            boolean used = !fresh;
            if (better.isPresent()) now = better.get();
            fresh = better.isEmpty() || used;
            if (fresh) now = new Point(now.z, now.readings, model.slopes(now.readings, now.z));
            double gained = before - misfit(observed, now.z, now.readings);
            if (better.isPresent() && gained < GAIN && longest < 10 * STILL) break;
            if (step >= PATIENCE && misfit(observed, now.z, now.readings) > interest) break;
        }
        double[][] slopes = fresh ? now.slopes : model.slopes(now.readings, now.z);
        return new Fit(observed, now.z, now.readings, slopes);
    }

    /** A point on the way to an aim at which less is missed. Its slopes are the old ones, carried along. */
    private static Optional<Point> better(ReadingModel model, List<Observation> observed, Point now, double[] aim) {
        double before = misfit(observed, now.z, now.readings), longest = longest(now.z, aim);
        double share = Math.min(1, LONGEST / Math.max(longest, 1e-300));
        for (int k = 0; k < MOST_HALVINGS; k++, share /= 2) {
            double[] there = moved(model.latents(), now.z, aim, share);
            Optional<Readings> readings = model.at(there, Optional.of(now.readings), 0, observed.size());
            if (readings.isPresent() && misfit(observed, there, readings.get()) < before) {
                return Optional.of(new Point(there, readings.get(), carried(model.latents(), now, there)));
            }
            if (share * longest < STILL / 4) break;
        }
        return Optional.empty();
    }

    /** Slopes elsewhere, were everything straight in the values. */
    private static double[][] carried(List<Latent> latents, Point from, double[] there) {
        double[][] slopes = new double[from.slopes.length][there.length];
        for (int j = 0; j < there.length; j++) {
            double old = latents.get(j).bend().slope(from.z[j]);
            double ratio = old < 1e-9 ? 1 : latents.get(j).bend().slope(there[j]) / old;
            for (int i = 0; i < slopes.length; i++) slopes[i][j] = ratio * from.slopes[i][j];
        }
        return slopes;
    }

    /** How far the best numbers would move each reading from that of the typical build, were everything straight. */
    static double[] straightMove(List<Observation> observed, double[] typical, double[][] slopes) {
        double[] weights = new CholeskyDecomposition(MatrixUtils.createRealMatrix(covariance(observed, slopes)))
                .getSolver()
                .solve(new ArrayRealVector(errors(observed, typical)))
                .toArray();
        double[] z = gathered(slopes, weights, slopes[0].length), moved = new double[typical.length];
        for (int i = 0; i < moved.length; i++) moved[i] = dot(slopes[i], z);
        return moved;
    }

    /** −2 ln of the readings' probability density, were everything straight about the typical build. */
    static double straightCost(List<Observation> observed, double[] typical, double[][] slopes) {
        CholeskyDecomposition k = new CholeskyDecomposition(MatrixUtils.createRealMatrix(covariance(observed, slopes)));
        double[] e = errors(observed, typical);
        double sum = dot(e, k.getSolver().solve(new ArrayRealVector(e)).toArray());
        for (int i = 0; i < e.length; i++)
            sum += Math.log(2 * Math.PI) + 2 * Math.log(k.getL().getEntry(i, i));
        return sum;
    }

    private static double[] errors(List<Observation> observed, double[] values) {
        double[] e = new double[values.length];
        for (int i = 0; i < e.length; i++) e[i] = observed.get(i).value() - values[i];
        return e;
    }

    private static double[] aim(List<Observation> observed, Point at) {
        double[] weights = new CholeskyDecomposition(MatrixUtils.createRealMatrix(covariance(observed, at.slopes)))
                .getSolver()
                .solve(new ArrayRealVector(surprise(observed, at)))
                .toArray();
        return gathered(at.slopes, weights, at.z.length);
    }

    /** y − f + J z: what was read beyond what the numbers' middle would give, were everything straight. */
    private static double[] surprise(List<Observation> observed, Point at) {
        double[] e = new double[observed.size()];
        for (int i = 0; i < e.length; i++)
            e[i] = observed.get(i).value() - at.readings.values()[i] + dot(at.slopes[i], at.z);
        return e;
    }

    private static double[] gathered(double[][] slopes, double[] weights, int numbers) {
        double[] sum = new double[numbers];
        for (int i = 0; i < weights.length; i++) for (int j = 0; j < numbers; j++) sum[j] += weights[i] * slopes[i][j];
        return sum;
    }

    private static double[][] covariance(List<Observation> observed, double[][] slopes) {
        int count = observed.size();
        double[][] k = new double[count][count];
        for (int i = 0; i < count; i++) {
            for (int j = 0; j <= i; j++) k[i][j] = k[j][i] = dot(slopes[i], slopes[j]);
            k[i][i] += observed.get(i).sigma() * observed.get(i).sigma();
        }
        return k;
    }

    static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int k = 0; k < a.length; k++) sum += a[k] * b[k];
        return sum;
    }

    private static double longest(double[] from, double[] to) {
        double longest = 0;
        for (int k = 0; k < from.length; k++) longest = Math.max(longest, Math.abs(to[k] - from[k]));
        return longest;
    }

    private static double[] moved(List<Latent> latents, double[] from, double[] to, double share) {
        double[] there = new double[from.length];
        for (int k = 0; k < there.length; k++)
            there[k] = latents.get(k).bend().moved(from[k], share * (to[k] - from[k]));
        return there;
    }

    /** Squares of the readings' errors and of the numbers, together. */
    private static double misfit(List<Observation> observed, double[] z, Readings readings) {
        double sum = dot(z, z);
        for (int i = 0; i < observed.size(); i++) {
            double error = (observed.get(i).value() - readings.values()[i])
                    / observed.get(i).sigma();
            sum += error * error;
        }
        return sum;
    }

    List<Observation> observed() {
        return observed;
    }

    double[] z() {
        return z.clone();
    }

    Point point() {
        return new Point(z, readings, slopes);
    }

    double[] values() {
        return readings.values();
    }

    double[][] slopes() {
        return slopes;
    }

    RealMatrix inverse() {
        return inverse;
    }

    /**
     * Squares of errors and numbers at the best explanation: chi-square distributed, with as many degrees of freedom as there are
     * readings, if build and readings are what they are taken for.
     */
    double misfit() {
        return misfit;
    }

    /** −2 ln of the readings' probability density under this explanation, all numbers counted in (Laplace). */
    double cost() {
        return misfit + logDeterminant + observed.size() * Math.log(2 * Math.PI);
    }

    /** What all other readings say of reading i: {value, standard deviation of its difference from the one read}. */
    double[] withoutReading(int i) {
        double[] e = surprise(observed, point());
        double variance = 1 / inverse.getEntry(i, i);
        double error = inverse.operate(e)[i] * variance;
        return new double[] {observed.get(i).value() - error, Math.sqrt(variance)};
    }

    /** Covariance of the numbers that the readings leave. */
    RealMatrix left() {
        RealMatrix j = new Array2DRowRealMatrix(slopes, false);
        RealMatrix left = MatrixUtils.createRealIdentityMatrix(z.length)
                .subtract(j.transpose().multiply(inverse).multiply(j));
        return left.add(left.transpose()).scalarMultiply(0.5);
    }
}
