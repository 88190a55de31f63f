package galena.build.quantity;

/**
 * From one quantity to another of the same kind.
 *
 * @param low the smaller
 * @param high the larger; a range of no width is allowed
 * @param text as written
 */
public record Range(Quantity low, Quantity high, String text) {
    public Range {
        if (low.unit() != high.unit()) throw new IllegalArgumentException("a range has one unit: " + text);
        if (low.value() > high.value()) throw new IllegalArgumentException("a range runs upwards: " + text);
    }

    /** Reads {@code 5..60 pF}, {@code 60 Hz..4.5 kHz}, {@code -10..+50 °C}. */
    public static Range read(String text, Unit unit) throws BadQuantity {
        return Spelling.readRange(Spelling.trim(text), unit);
    }

    /** The value (SI) at a fraction 0..1 of the way from low to high. */
    public double at(double fraction) {
        return low.value() + fraction * (high.value() - low.value());
    }

    public boolean contains(double value) {
        return low.value() <= value && value <= high.value();
    }

    @Override
    public String toString() {
        return text;
    }
}
