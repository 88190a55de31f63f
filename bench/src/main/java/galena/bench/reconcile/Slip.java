package galena.bench.reconcile;

import galena.build.folder.LogEntry.What;
import java.util.List;

/**
 * A way to write down another number than was meant.
 *
 * @param words what happened: "the probe's factor was forgotten"
 * @param factor by which what was written must be multiplied
 */
record Slip(String words, double factor) {
    private static final double KILO = 1e3;
    private static final double PROBE = 10;

    /** Those that a kind of reading is open to. */
    static List<Slip> of(What what) {
        return switch (what) {
            case CARRIER ->
                List.of(
                        unit(KILO),
                        unit(1 / KILO),
                        new Slip("the second harmonic was taken for the carrier", 0.5),
                        new Slip("the third harmonic was taken for the carrier", 1.0 / 3),
                        new Slip("half the carrier was read, as a counter on every other cycle shows it", 2));
            case AMPLITUDE ->
                List.of(
                        unit(KILO),
                        unit(1 / KILO),
                        new Slip("the probe's factor of 10 was forgotten", PROBE),
                        new Slip("the probe's factor of 10 was counted twice", 1 / PROBE),
                        new Slip("it is an rms value, not a peak", Math.sqrt(2)),
                        new Slip("it is peak to peak, not a peak", 0.5));
            case CURRENT -> List.of(unit(KILO), unit(1 / KILO));
            case VOLTAGE ->
                List.of(
                        unit(KILO),
                        unit(1 / KILO),
                        new Slip("its sign is turned", -1),
                        new Slip("the probe's factor of 10 was forgotten", PROBE));
            case SECOND_HARMONIC, THIRD_HARMONIC -> List.of(new Slip("its sign is turned", -1));
            default -> List.of();
        };
    }

    private static Slip unit(double factor) {
        return new Slip("a slip of the unit, by a thousand", factor);
    }
}
