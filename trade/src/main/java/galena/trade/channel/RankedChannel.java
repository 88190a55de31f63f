package galena.trade.channel;

import java.util.List;

/**
 * A channel and everything against it.
 *
 * @param frequency (Hz)
 * @param dayPoints sum of what counts by day
 * @param nightPoints sum of what counts by night
 * @param onBothRasters whether sets of 9 and of 10 kHz steps stop here
 * @param nuisances the worst first
 */
public record RankedChannel(
        double frequency, double dayPoints, double nightPoints, boolean onBothRasters, List<Nuisance> nuisances) {
    public RankedChannel {
        nuisances = List.copyOf(nuisances);
    }

    /** Points of the worse time of day. */
    public double points() {
        return Math.max(dayPoints, nightPoints);
    }

    /** The reason in one sentence. */
    public String reason() {
        if (nuisances.isEmpty()) return "nothing known against it";
        return nuisances.get(0).words() + (nuisances.size() > 1 ? ", and " + (nuisances.size() - 1) + " more" : "");
    }
}
