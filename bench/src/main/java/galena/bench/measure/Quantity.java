package galena.bench.measure;

/**
 * What a capture is a capture of. Harmonics of tank voltage and coil current differ by 20 log n; depth after a receiver's
 * filter is less than on the air at high audio frequencies. A figure without its quantity is no figure.
 */
public enum Quantity {
    PROBE_VOLTAGE("voltage at the probe"),
    TANK_VOLTAGE("tank voltage"),
    COIL_CURRENT("coil current"),
    FIELD("field"),
    AFTER_RECEIVER("after a receiver's filter"),
    AUDIO("audio");

    private final String words;

    Quantity(String words) {
        this.words = words;
    }

    @Override
    public String toString() {
        return words;
    }
}
