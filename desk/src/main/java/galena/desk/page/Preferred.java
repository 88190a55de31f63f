package galena.desk.page;

import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.quantity.Engineering;
import galena.build.quantity.Quantity;
import galena.trade.preferred.Series;
import java.util.Optional;

/**
 * The preferred values next to a part's own, as they are written (IEC 60063): resistors by E24, capacitors by E12, presets by E3. A coil
 * is wound and not bought: its steps are those of E24, for want of others.
 *
 * @param below empty for parts without a plain value
 * @param above likewise
 */
record Preferred(Optional<String> below, Optional<String> above) {
    private static final Preferred NONE = new Preferred(Optional.empty(), Optional.empty());
    private static final double NEXT = 1 + 1e-6;

    static Preferred of(PartEntry part) {
        Optional<Quantity> value = part.value();
        Optional<Series> series = series(part.kind());
        if (value.isEmpty() || series.isEmpty() || !(value.get().value() > 0)) return NONE;
        double now = value.get().value();
        return new Preferred(
                Optional.of(Engineering.exact(
                        round(series.get().atMost(now / NEXT)), value.get().unit())),
                Optional.of(Engineering.exact(
                        round(series.get().atLeast(now * NEXT)), value.get().unit())));
    }

    /** What powers of ten leave behind goes. */
    private static double round(double value) {
        return Double.parseDouble(String.format(java.util.Locale.ROOT, "%.6e", value));
    }

    private static Optional<Series> series(PartKind kind) {
        return switch (kind) {
            case RESISTOR, COIL, LOOPSTICK, LOOP -> Optional.of(Series.E24);
            case CAPACITOR -> Optional.of(Series.E12);
            case PRESET -> Optional.of(Series.E3);
            default -> Optional.empty();
        };
    }
}
