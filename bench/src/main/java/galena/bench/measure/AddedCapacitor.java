package galena.bench.measure;

import galena.signal.Estimate;

/**
 * Coil and capacitance of a tuned circuit from its frequency bare and with a known capacitor across it. With
 * f² = 1/(4π² L C), the two give C = Cadded/((f bare/f loaded)² − 1), and L from either. The added capacitor's tolerance
 * is what limits it.
 *
 * @param inductance (H)
 * @param capacitance everything across the coil when bare (F)
 */
public record AddedCapacitor(Estimate inductance, Estimate capacitance) {
    /**
     * @param bare frequency without the added capacitor (Hz)
     * @param loaded frequency with it (Hz)
     * @param added its capacitance (F)
     */
    public static AddedCapacitor of(Estimate bare, Estimate loaded, Estimate added) {
        if (!(loaded.low() > 0) || !(added.low() > 0))
            throw new IllegalArgumentException("Frequencies and capacitance must be positive");
        if (!(bare.low() > loaded.high())) {
            throw new IllegalArgumentException(
                    "The added capacitor must lower the frequency by more than the readings' own uncertainty; add a larger one");
        }
        return new AddedCapacitor(
                Propagation.of(x -> inductance(x[0], x[1], x[2]), bare, loaded, added),
                Propagation.of(x -> capacitance(x[0], x[1], x[2]), bare, loaded, added));
    }

    /** What is left for strays when the capacitance that should be there is known (F). */
    public Estimate stray(Estimate fitted) {
        return Propagation.of(x -> x[0] - x[1], capacitance, fitted);
    }

    private static double capacitance(double bare, double loaded, double added) {
        double ratio = bare / loaded;
        return added / (ratio * ratio - 1);
    }

    private static double inductance(double bare, double loaded, double added) {
        double w = 2 * Math.PI * bare;
        return 1 / (w * w * capacitance(bare, loaded, added));
    }
}
