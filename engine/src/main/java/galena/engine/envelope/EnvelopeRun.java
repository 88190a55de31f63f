package galena.engine.envelope;

import java.util.Map;

/**
 * A modulated oscillation that was followed in time, cycle by cycle: where it quits in the trough, or snaps, there is no smooth
 * period to be solved for. What it does after it has quit starts from what is left in its coils and not from noise, so that the
 * moment of its return is earlier than a bench shows.
 */
public final class EnvelopeRun implements EnvelopeAnswer {
    private final SlowSource source;
    private final double frequency;
    private final int periods;
    private final double repeats;
    private final Map<String, double[][]> basebands;

    EnvelopeRun(SlowSource source, double frequency, int periods, double repeats, Map<String, double[][]> basebands) {
        this.source = source;
        this.frequency = frequency;
        this.periods = periods;
        this.repeats = repeats;
        this.basebands = Map.copyOf(basebands);
    }

    /** What modulates. */
    public SlowSource source() {
        return source;
    }

    /** The frequency from which the envelope is seen: the unmodulated oscillation's, Hz. */
    public double frequency() {
        return frequency;
    }

    /** Slow periods that were run; the last is the answer. */
    public int periods() {
        return periods;
    }

    /** Largest difference of an amplitude from that a slow period before, as a share of its largest: how well the run had settled. */
    public double repeats() {
        return repeats;
    }

    /**
     * Complex peak amplitude of a coil's or resonator's current at the carrier on equally spaced points of the last slow period.
     *
     * @return {real parts, imaginary parts}
     * @throws IllegalArgumentException for a part that was not watched
     */
    public double[][] current(String part) {
        double[][] z = basebands.get(part);
        if (z == null) throw new IllegalArgumentException(part + " is no coil or resonator of this circuit");
        return new double[][] {z[0].clone(), z[1].clone()};
    }
}
