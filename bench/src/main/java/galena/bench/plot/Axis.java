package galena.bench.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * One axis: where a value lies on the paper, and at which round values marks stand.
 *
 * @param low value at {@code from}
 * @param high value at {@code to}
 * @param from place of the low end (px)
 * @param to place of the high end (px)
 */
record Axis(double low, double high, double from, double to) {
    private static final int MARKS = 6;

    Axis {
        if (!(high > low)) throw new IllegalArgumentException("An axis runs from a lower to a higher value");
    }

    /** An axis a little longer than the values, never of no length. */
    static Axis around(double low, double high, double from, double to) {
        double room = high > low ? 0.05 * (high - low) : Math.max(1e-12, Math.abs(low) * 0.05);
        return new Axis(low - room, high + room, from, to);
    }

    double at(double value) {
        return from + (value - low) / (high - low) * (to - from);
    }

    /** Round values between the ends: 1, 2 or 5 times a power of ten apart. */
    List<Double> marks() {
        double rough = (high - low) / MARKS, power = Math.pow(10, Math.floor(Math.log10(rough))), share = rough / power;
        double step = power * (share < 1.5 ? 1 : share < 3.5 ? 2 : share < 7.5 ? 5 : 10);
        List<Double> out = new ArrayList<>();
        for (double k = Math.ceil(low / step); k * step <= high; k++) out.add(k * step);
        return out;
    }

    /** A mark's value as text, without digits that say nothing. */
    static String label(double value) {
        if (Math.abs(value) < 1e-12) return "0";
        String text = String.format(Locale.ROOT, "%.6g", value);
        return text.contains("e") || !text.contains(".")
                ? text
                : text.replaceAll("0+$", "").replaceAll("\\.$", "").replace("-", "−");
    }
}
