package galena.bench.reconcile;

import galena.build.readings.Latent;
import galena.build.wiring.Bend;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Moves explanations about among themselves, until they are spread as their law says: along the difference of two others, to a place
 * drawn from that law on the line, which is a normal one cut off where a value meets an end. Directions of differences lie along what the
 * readings leave open. Hit and run: R. L. Smith, Operations Research 32 (1984) 1296 (from memory).
 */
final class Mixing {
    private static final int MOVES = 60;
    private static final double FAR = 1e9;

    private final List<Latent> latents;
    private final double[][] byValue;
    private final double[] sigmas;
    private final Random random;

    /**
     * @param byValue slopes of the readings by the values, a row a reading
     * @param sigmas of the readings
     */
    Mixing(List<Latent> latents, double[][] byValue, double[] sigmas, Random random) {
        this.latents = latents;
        this.byValue = byValue;
        this.sigmas = sigmas;
        this.random = random;
    }

    /**
     * @param places values of each explanation, a row each
     * @param errors of the readings at each: what was read less what it gives
     * @return values, moved
     */
    List<double[]> mixed(List<double[]> places, List<double[]> errors) {
        if (places.size() < 3) return places;
        List<double[]> mixed = new ArrayList<>();
        for (int k = 0; k < places.size(); k++) {
            double[] at = places.get(k).clone(), error = errors.get(k).clone();
            for (int move = 0; move < MOVES; move++) {
                int one = other(k, places.size()), other = other(k, places.size());
                if (one != other) move(at, error, places.get(one), places.get(other));
            }
            mixed.add(at);
        }
        return mixed;
    }

    /** Of the others: a line through an explanation's own place would draw it towards the rest. */
    private int other(int than, int count) {
        int other = random.nextInt(count - 1);
        return other < than ? other : other + 1;
    }

    private void move(double[] at, double[] error, double[] one, double[] other) {
        double low = -FAR, high = FAR, precision = 0, pull = 0;
        double[] way = new double[at.length];
        for (int j = 0; j < at.length; j++) {
            way[j] = one[j] - other[j];
            if (way[j] == 0) continue;
            Bend bend = latents.get(j).bend();
            double toZero = -at[j] / way[j], toOne = (1 - at[j]) / way[j];
            if (bend == Bend.NORMAL) {
                precision += way[j] * way[j];
                pull -= at[j] * way[j];
                continue;
            }
            double end = bend == Bend.EVEN ? toOne : way[j] > 0 ? FAR : -FAR;
            low = Math.max(low, Math.min(toZero, end));
            high = Math.min(high, Math.max(toZero, end));
            if (bend == Bend.EXPONENTIAL) pull -= way[j];
        }
        double[] changes = new double[error.length];
        for (int i = 0; i < error.length; i++) {
            changes[i] = Fit.dot(byValue[i], way);
            precision += changes[i] * changes[i] / (sigmas[i] * sigmas[i]);
            pull += changes[i] * error[i] / (sigmas[i] * sigmas[i]);
        }
        if (!(precision > 0) || !(low < high)) return;
        double by = cut(pull / precision, 1 / Math.sqrt(precision), low, high);
        for (int j = 0; j < at.length; j++) at[j] += by * way[j];
        for (int i = 0; i < error.length; i++) error[i] -= by * changes[i];
    }

    /** A normal number within ends. */
    private double cut(double middle, double deviation, double low, double high) {
        double from = Bend.uniform((low - middle) / deviation), to = Bend.uniform((high - middle) / deviation);
        double drawn = middle + deviation * Bend.normal(from + random.nextDouble() * (to - from));
        return Math.max(low, Math.min(high, drawn));
    }
}
