package galena.desk.writing;

import galena.build.figure.Figure;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/**
 * How figures are put on a page. A value and the ends of its interval share one unit and one last place; that place is no finer
 * than the interval, than {@value #MOST_FIGURES} figures, or than a meter reads.
 */
public final class Words {
    private static final int MOST_FIGURES = 4;
    /** The last place in which a voltage is worth printing: a millivolt. */
    private static final int VOLT_PLACE = -3;

    private Words() {}

    /** "1000 kHz (970 to 1030 kHz)"; the interval is left out where it is finer than the figure; a reason for no number. */
    public static String withInterval(Figure figure) {
        if (!(figure instanceof Figure.Known known)) return figure.text();
        Scale scale = Scale.of(known.unit(), largest(known));
        int place = place(known, scale);
        String value = scale.digits(known.value(), place);
        String low = scale.digits(known.low(), place), high = scale.digits(known.high(), place);
        String whole = value + scale.symbol();
        return low.equals(high) ? whole : whole + " (" + low + " to " + high + scale.symbol() + ")";
    }

    /** "970 to 1030 kHz". */
    static String interval(Figure.Known known) {
        Scale scale = Scale.of(known.unit(), largest(known));
        int place = place(known, scale);
        return scale.digits(known.low(), place) + " to " + scale.digits(known.high(), place) + scale.symbol();
    }

    /** "1000 kHz", no finer than its interval; a reason where there is no number. */
    public static String alone(Figure figure) {
        if (!(figure instanceof Figure.Known known)) return figure.text();
        Scale scale = Scale.of(known.unit(), largest(known));
        return scale.digits(known.value(), place(known, scale)) + scale.symbol();
    }

    /** The number without its unit: for columns whose head names the unit. */
    static String bare(Figure.Known known) {
        Scale scale = Scale.of(known.unit(), largest(known));
        return scale.digits(known.value(), place(known, scale));
    }

    /** A plain number of so many figures, in the page's units. */
    public static String number(double value, Unit unit, int figures) {
        Scale scale = Scale.of(unit, Math.abs(value));
        double shown = Math.abs(scale.shown(value));
        int place = shown == 0 ? 0 : leading(shown) - figures + 1;
        return scale.digits(value, Math.min(place, 0)) + scale.symbol();
    }

    /** "40 %", or "4.5 %" where a tenth matters. */
    public static String percent(double share) {
        return Engineering.print(share, Unit.FRACTION, Math.abs(share) < 0.0995 ? 2 : 3)
                .replaceFirst("\\.0+ ", " ");
    }

    /** "3e-9" */
    static String power(double small) {
        return String.format(Locale.ROOT, "%.0e", small).replace("e-0", "e-");
    }

    private static double largest(Figure.Known known) {
        return Math.max(Math.abs(known.value()), Math.max(Math.abs(known.low()), Math.abs(known.high())));
    }

    /** The power of ten of the last figure to print, in the shown unit. */
    private static int place(Figure.Known known, Scale scale) {
        double most = Math.max(Math.abs(scale.shown(known.low())), Math.abs(scale.shown(known.high())));
        int place = most == 0 ? 0 : leading(most) - MOST_FIGURES + 1;
        double half = Math.abs(scale.shown(known.high()) - scale.shown(known.low())) / 2;
        // Two figures of an interval that begins with 1: 14 kHz must not become 10 kHz.
        if (half > 0) place = Math.max(place, leading(half) - (half / Math.pow(10, leading(half)) < 2 ? 1 : 0));
        else place = Math.max(place, most == 0 ? 0 : leading(most) - 2);
        if (known.unit() == Unit.VOLT) place = Math.max(place, VOLT_PLACE - scale.power());
        return place;
    }

    private static int leading(double positive) {
        return (int) Math.floor(Math.log10(positive) + 1e-12);
    }

    /**
     * The unit in which a number is shown.
     *
     * @param factor of the shown number against the SI one
     * @param offset taken from the SI number first
     * @param power of ten that the prefix stands for
     * @param symbol with the blank before it
     */
    private record Scale(double factor, double offset, int power, String symbol) {
        private static final String[] PREFIXES = {"f", "p", "n", "µ", "m", "", "k", "M", "G"};
        private static final double HOUR = 3600;
        private static final double ZERO_CELSIUS = 273.15;
        /** Builders on medium wave think in kilohertz on both sides of a megahertz. */
        private static final double KILOHERTZ_UP_TO = 9.9995e6;

        static Scale of(Unit unit, double largest) {
            return switch (unit) {
                case FRACTION -> new Scale(100, 0, 0, " %");
                case KELVIN -> new Scale(1, ZERO_CELSIUS, 0, " °C");
                case DECIBEL -> new Scale(1, 0, 0, " dB");
                case NUMBER, RATIO -> new Scale(1, 0, 0, "");
                case COULOMB -> new Scale(1 / 3.6, 0, 0, " mAh");
                case PPM_PER_KELVIN -> new Scale(1e6, 0, 0, " ppm/K");
                case SECOND -> largest >= 2 * HOUR ? new Scale(1 / HOUR, 0, 0, " h") : prefixed(unit, largest);
                case HERTZ ->
                    largest >= 1e3 && largest < KILOHERTZ_UP_TO
                            ? new Scale(1e-3, 0, 3, " kHz")
                            : prefixed(unit, largest);
                default -> prefixed(unit, largest);
            };
        }

        private static Scale prefixed(Unit unit, double largest) {
            // 999.96 must not be shown as 1000 of the smaller unit.
            int third = largest == 0 ? 0 : Math.floorDiv(leading(largest * 1.0005), 3);
            // nobody counts femtofarads: a stray is 0.2 pF
            third = Math.max(unit == Unit.FARAD ? -4 : -5, Math.min(3, third));
            if (unit == Unit.VOLT && largest < 1e-3) third = 0;
            return new Scale(Math.pow(10, -3 * third), 0, 3 * third, " " + PREFIXES[third + 5] + unit.symbol());
        }

        double shown(double value) {
            return (value - offset) * factor;
        }

        String digits(double value, int place) {
            String digits = new BigDecimal(shown(value))
                    .setScale(-place, RoundingMode.HALF_EVEN)
                    .setScale(Math.max(0, -place), RoundingMode.UNNECESSARY)
                    .toPlainString();
            if (digits.matches("-?0(\\.0+)?")) return "0";
            return digits.replace('-', '−');
        }
    }
}
