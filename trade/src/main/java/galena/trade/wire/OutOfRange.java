package galena.trade.wire;

import java.util.Locale;

/**
 * A value that a formula, table or construction does not cover. The message names the quantity, the range, the cure.
 */
public final class OutOfRange extends RuntimeException {
    private final String quantity;
    private final double found;
    private final double low;
    private final double high;

    /**
     * @param quantity what was out of range, with its unit in words
     * @param found the value met
     * @param low least value covered
     * @param high greatest value covered; infinity for none
     * @param remedy what to do instead
     */
    public OutOfRange(String quantity, double found, double low, double high, String remedy) {
        super(quantity + " is " + plain(found) + "; covered is " + range(low, high) + ". " + remedy);
        this.quantity = quantity;
        this.found = found;
        this.low = low;
        this.high = high;
    }

    /**
     * Returns {@code value} when low ≤ value ≤ high.
     *
     * @throws OutOfRange otherwise, and for a value that is not a number
     */
    public static double require(String quantity, double value, double low, double high, String remedy) {
        if (value >= low && value <= high) return value;
        throw new OutOfRange(quantity, value, low, high, remedy);
    }

    /** Returns {@code value} when it is finite and greater than zero. */
    public static double requirePositive(String quantity, double value) {
        return require(quantity, value, Double.MIN_NORMAL, Double.MAX_VALUE, "Give a size greater than zero.");
    }

    public String quantity() {
        return quantity;
    }

    public double found() {
        return found;
    }

    public double low() {
        return low;
    }

    public double high() {
        return high;
    }

    private static String range(double low, double high) {
        if (low == Double.MIN_NORMAL) return "more than 0";
        return high >= Double.MAX_VALUE ? plain(low) + " and more" : plain(low) + " to " + plain(high);
    }

    private static String plain(double value) {
        double whole = Math.rint(value);
        if (whole == value && Math.abs(value) < 1e12) return String.format(Locale.ROOT, "%.0f", value);
        return String.format(Locale.ROOT, "%.4g", value)
                .replaceFirst("(\\.\\d*?)0+($|e)", "$1$2")
                .replaceFirst("\\.($|e)", "$1");
    }
}
