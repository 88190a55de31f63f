package galena.build.quantity;

/**
 * A quantity that holds at one frequency, as a coil's Q does.
 *
 * @param value the quantity
 * @param frequency where it holds, above zero
 * @param text as written
 */
public record AtFrequency(Quantity value, Quantity frequency, String text) {
    public AtFrequency {
        if (frequency.unit() != Unit.HERTZ || frequency.value() <= 0)
            throw new IllegalArgumentException("a frequency above zero comes after the @: " + text);
    }

    /** Reads {@code 85 @ 1 MHz}. */
    public static AtFrequency read(String text, Unit unit) throws BadQuantity {
        return Spelling.readAtFrequency(Spelling.trim(text), unit);
    }

    @Override
    public String toString() {
        return text;
    }
}
