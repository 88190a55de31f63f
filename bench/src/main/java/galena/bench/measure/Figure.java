package galena.bench.measure;

import galena.signal.Estimate;
import java.util.Locale;

/**
 * One figure of a report.
 *
 * @param key for programs, in lower case with points: {@code depth.positive}
 * @param label for people
 * @param reading the value, a limit, or why there is none
 * @param unit of the value, its low and high
 * @param quantity what it is a figure of
 * @param how it was taken, and what its interval leaves out
 */
public record Figure(String key, String label, Reading reading, String unit, String quantity, String how) {

    /** The reading in words, no finer than its interval. */
    public String words() {
        if (reading instanceof Reading.Known known) return number(known.estimate()) + " " + unit;
        if (reading instanceof Reading.Below below)
            return "below " + plain(below.limit(), decimals(Math.abs(below.limit()) / 20)) + " " + unit;
        return "not measured: " + ((Reading.Missing) reading).reason();
    }

    /** Value and interval with as many decimals as two digits of the interval's half-width take. */
    private static String number(Estimate e) {
        int decimals = decimals(e.halfWidth());
        String value = plain(e.value(), decimals);
        if (e.halfWidth() == 0) return value;
        double up = e.high() - e.value(), down = e.value() - e.low();
        boolean even = Math.abs(up - down) < 0.1 * e.halfWidth();
        return even
                ? value + " ± " + plain(e.halfWidth(), decimals)
                : value + " (" + plain(e.low(), decimals) + " to " + plain(e.high(), decimals) + ")";
    }

    private static int decimals(double width) {
        if (!(width > 0)) return 3;
        return (int) Math.max(-9, Math.min(9, 1 - Math.floor(Math.log10(width) + 1e-9)));
    }

    private static String plain(double x, int decimals) {
        if (decimals >= 0) return String.format(Locale.ROOT, "%." + decimals + "f", x);
        double grid = Math.pow(10, -decimals);
        return String.format(Locale.ROOT, "%.0f", Math.rint(x / grid) * grid);
    }
}
