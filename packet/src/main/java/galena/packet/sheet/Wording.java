package galena.packet.sheet;

import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Figures in words: a value and its window share one unit and one last place, no finer than the window and than a bench meter
 * shows.
 */
final class Wording {
    private static final int MOST_FIGURES = 4;

    /** What a bench meter shows as nothing, V. */
    private static final double NO_VOLTAGE = 5e-4;

    private Wording() {}

    /** Unit and size in which a number is written. */
    private record Scale(double size, String symbol) {
        static Scale of(Unit unit, double largest) {
            if (unit == Unit.SECOND && largest >= 3600) return new Scale(3600, " h");
            if (unit == Unit.FRACTION) return new Scale(0.01, " %");
            if (unit == Unit.DECIBEL || unit == Unit.NUMBER || unit == Unit.KELVIN) return new Scale(1, space(unit));
            double[] sizes = {1e6, 1e3, 1, 1e-3, 1e-6, 1e-9, 1e-12};
            String[] prefixes = {"M", "k", "", "m", "µ", "n", "p"};
            if (unit == Unit.VOLT && largest < NO_VOLTAGE) return new Scale(1, " V");
            if (unit == Unit.HERTZ) return largest >= 1e3 ? new Scale(1e3, " kHz") : new Scale(1, " Hz");
            for (int k = 0; k < sizes.length; k++)
                if (largest >= sizes[k] * 0.9995) return new Scale(sizes[k], " " + prefixes[k] + unit.symbol());
            return new Scale(1, space(unit));
        }

        private static String space(Unit unit) {
            return unit.symbol().isEmpty() ? "" : " " + unit.symbol();
        }

        String digits(double value, int place) {
            BigDecimal rounded = BigDecimal.valueOf(value / size).setScale(-place, RoundingMode.HALF_EVEN);
            String text = rounded.setScale(Math.max(0, -place), RoundingMode.HALF_EVEN)
                    .toPlainString();
            return text.matches("-[0.]+") ? text.substring(1) : text.replace('-', '−');
        }
    }

    /** A plain number of so many figures. */
    static String number(double value, Unit unit, int figures) {
        Scale scale = Scale.of(unit, Math.abs(value));
        double shown = Math.abs(value / scale.size());
        int place = shown == 0 ? 0 : leading(shown) - figures + 1;
        return scale.digits(value, Math.max(coarsest(unit, scale), Math.min(0, place))) + scale.symbol();
    }

    /** The last place that anybody reads: a tenth of a millivolt, of a decibel, a hertz. */
    private static int coarsest(Unit unit, Scale scale) {
        double least =
                switch (unit) {
                    case VOLT -> 1e-4;
                    case DECIBEL -> 0.1;
                    case HERTZ -> 1;
                    default -> 0;
                };
        return least == 0 ? Integer.MIN_VALUE : (int) Math.round(Math.log10(least / scale.size()));
    }

    /** "2.46 V", no finer than its window; the reason where there is no number. */
    static String value(Figure figure) {
        if (!(figure instanceof Figure.Known k)) return figure.text();
        if (k.unit() == Unit.VOLT && largest(k) < NO_VOLTAGE) return "0 V";
        Scale scale = Scale.of(k.unit(), largest(k));
        return scale.digits(k.value(), place(k, scale)) + scale.symbol();
    }

    /** "1.8 to 3.3 V"; "—" where there is no number. */
    static String window(Figure figure) {
        if (!(figure instanceof Figure.Known k)) return "—";
        if (k.unit() == Unit.VOLT && largest(k) < NO_VOLTAGE) return "0 V";
        Scale scale = Scale.of(k.unit(), largest(k));
        int place = place(k, scale);
        String low = scale.digits(k.low(), place), high = scale.digits(k.high(), place);
        return low.equals(high) ? low + scale.symbol() : low + " to " + high + scale.symbol();
    }

    /** "2.5 V (1.8 to 3.3 V)" */
    static String both(Figure figure) {
        if (!(figure instanceof Figure.Known)) return figure.text();
        String value = value(figure), window = window(figure);
        return value.equals(window) ? value : value + " (" + window + ")";
    }

    /** "0.70 to 1.03 mA" */
    static String span(double low, double high, Unit unit) {
        return window(new Figure.Known((low + high) / 2, unit, low, high, "", "", ""));
    }

    /** "+2.1 dB" of a ratio of amplitudes. */
    static String decibels(double ratio) {
        double level = 20 * Math.log10(ratio);
        return signed(level, Unit.DECIBEL, 2);
    }

    /** "+1.2 kHz" */
    static String signed(double value, Unit unit, int figures) {
        String text = number(value, unit, figures);
        return value > 0 && !text.matches("[0.]+ .*") ? "+" + text : text;
    }

    /** A minus as printers have it. */
    static String minus(String text) {
        return text.replaceFirst("^-", "−");
    }

    private static double largest(Figure.Known k) {
        return Math.max(Math.abs(k.value()), Math.max(Math.abs(k.low()), Math.abs(k.high())));
    }

    private static int place(Figure.Known k, Scale scale) {
        double most = largest(k) / scale.size();
        int place = most == 0 ? 0 : leading(most) - MOST_FIGURES + 1;
        double half = (k.high() - k.low()) / 2 / scale.size();
        if (half > 0) place = Math.max(place, leading(half) - (half / Math.pow(10, leading(half)) < 2 ? 1 : 0));
        if (k.unit() == Unit.VOLT) place = Math.max(place, (int) Math.round(Math.log10(1e-3 / scale.size())));
        return place;
    }

    private static int leading(double positive) {
        return (int) Math.floor(Math.log10(positive) + 1e-12);
    }

    /** "60 %" of a share or a position. */
    static String percent(double share) {
        return Math.round(100 * share) + " %";
    }
}
