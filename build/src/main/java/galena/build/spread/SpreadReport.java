package galena.build.spread;

import galena.build.figure.Figure;
import java.util.List;
import java.util.Map;

/**
 * What a spread came to.
 *
 * @param count builds drawn
 * @param seed of the sequence
 * @param yield share that meets the intent, with its 95 % interval
 * @param windows of every quantity over the builds that have it: median, and the limits that 95 % lie between
 * @param voltages the same of every net's mean voltage while it runs, V, by net
 * @param failures how many builds fail for each reason, most frequent first
 * @param worst the builds that miss by most reasons, then those nearest to a limit
 * @param tighten what halving one tolerance would buy, most first; those that buy nothing are left out
 * @param histograms of every quantity: values of all builds, sorted
 * @param limits against which the builds were judged
 */
public record SpreadReport(
        int count,
        long seed,
        Figure.Known yield,
        Map<Drawn.Quantity, Figure.Known> windows,
        Map<String, Figure.Known> voltages,
        Map<String, Integer> failures,
        List<Drawn> worst,
        List<Tighten> tighten,
        Map<Drawn.Quantity, double[]> histograms,
        Limits limits) {
    public SpreadReport {
        worst = List.copyOf(worst);
        tighten = List.copyOf(tighten);
    }

    /**
     * Halving one tolerance.
     *
     * @param what the tolerance
     * @param yield the share that would then meet the intent, by a linear model of the drawn builds
     */
    public record Tighten(String what, double yield) {}

    /**
     * What a copy must keep.
     *
     * @param harmonic strongest harmonic allowed, dB
     * @param distortion largest at the wanted depth, a fraction
     */
    public record Limits(double harmonic, double distortion) {}
}
