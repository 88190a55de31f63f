package galena.bench.measure;

import java.util.OptionalDouble;

/**
 * Where a carrier shows up that is sampled too slowly, and back: a line at f appears at the distance of f from the nearest
 * multiple of the sample rate. Screen-decimated exports are the usual way to get there.
 */
public final class Aliasing {
    private Aliasing() {}

    /**
     * Frequency at which a real line appears (Hz), between 0 and half the rate.
     *
     * @param frequency of the line (Hz)
     * @param rate of sampling (Hz)
     */
    public static double apparent(double frequency, double rate) {
        return Math.abs(frequency - rate * Math.rint(frequency / rate));
    }

    /**
     * The true frequency behind an apparent one: the candidate nearest to what is expected.
     *
     * @param apparent frequency seen (Hz)
     * @param rate of sampling (Hz)
     * @param expected carrier (Hz)
     * @param tolerance largest relative distance from what is expected
     * @return empty if no candidate comes so near, or if candidates lie too close together to tell
     */
    public static OptionalDouble trueFrequency(double apparent, double rate, double expected, double tolerance) {
        double best = Double.NaN, second = Double.POSITIVE_INFINITY, least = Double.POSITIVE_INFINITY;
        long middle = Math.round(expected / rate);
        for (long k = Math.max(0, middle - 1); k <= middle + 1; k++) {
            for (int sign = -1; sign <= 1; sign += 2) {
                double candidate = k * rate + sign * apparent;
                if (candidate <= 0) continue;
                double distance = Math.abs(candidate - expected);
                if (distance < least) {
                    second = least;
                    least = distance;
                    best = candidate;
                } else if (candidate != best) {
                    second = Math.min(second, distance);
                }
            }
        }
        boolean near = least <= tolerance * expected, alone = second > 2 * least;
        return near && alone ? OptionalDouble.of(best) : OptionalDouble.empty();
    }
}
