package galena.packet.chart;

import galena.packet.chart.Chart.Axis;
import galena.packet.chart.Chart.Scale;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.DoubleStream;

/**
 * How an axis is ruled: its ends, its ticks and where a value lies between them. Linear ticks fall on 1, 2 or 5 times a power of
 * ten in the axis's own unit; logarithmic ones on decades, with 2 and 5 between where there are few decades.
 *
 * @param low lower end, SI
 * @param high upper end, SI
 * @param ticks values with a line and a number, SI, upwards
 * @param labels the numbers, in the axis's unit
 */
record Ruling(Axis axis, double low, double high, List<Double> ticks, List<String> labels) {
    /** Values so near to the end of the page must not be cut by rounding. */
    private static final double SLACK = 1e-9;

    private static final double[] ROUND = {1, 2, 5};
    /** With more, only whole decades are ruled. */
    private static final int MOST_ROUND_TICKS = 10;

    static Ruling of(Axis axis, DoubleStream values, int wantedTicks) {
        var all = values.summaryStatistics();
        double low = all.getMin() / axis.unitSize(), high = all.getMax() / axis.unitSize();
        return axis.scale() == Scale.LOGARITHMIC ? decades(axis, low, high) : even(axis, low, high, wantedTicks);
    }

    private static Ruling even(Axis axis, double least, double most, int wanted) {
        double low = least, high = most;
        if (high - low <= SLACK * Math.max(Math.abs(low), Math.abs(high))) {
            double around = low == 0 ? 1 : Math.abs(low) * 0.01;
            low -= around;
            high += around;
        }
        double step = step((high - low) / wanted);
        long first = (long) Math.floor(low / step + SLACK), last = (long) Math.ceil(high / step - SLACK);
        int decimals = Math.max(0, (int) -Math.floor(Math.log10(step) + SLACK));
        List<Double> ticks = new ArrayList<>();
        List<String> labels = new ArrayList<>();
        for (long k = first; k <= last; k++) {
            ticks.add(k * step * axis.unitSize());
            labels.add(minus(String.format(Locale.ROOT, "%." + decimals + "f", k * step)));
        }
        return new Ruling(axis, first * step * axis.unitSize(), last * step * axis.unitSize(), ticks, labels);
    }

    /** The step of 1, 2 or 5 times a power of ten next above. */
    private static double step(double atLeast) {
        double power = Math.pow(10, Math.floor(Math.log10(atLeast)));
        for (double times : ROUND) if (times * power >= atLeast * (1 - SLACK)) return times * power;
        return 10 * power;
    }

    /** From the round number at or below the least to the one at or above the most. */
    private static Ruling decades(Axis axis, double least, double most) {
        int first = ROUND.length * (int) Math.floor(Math.log10(least)), last = first;
        while (round(first + 1) <= least * (1 + SLACK)) first++;
        while (round(last) < most * (1 - SLACK) || last == first) last++;
        boolean few = last - first <= MOST_ROUND_TICKS;
        List<Double> ticks = new ArrayList<>();
        List<String> labels = new ArrayList<>();
        for (int k = first; k <= last; k++) {
            if (!few && Math.floorMod(k, ROUND.length) != 0) continue;
            ticks.add(round(k) * axis.unitSize());
            labels.add(plain(round(k)));
        }
        return new Ruling(axis, round(first) * axis.unitSize(), round(last) * axis.unitSize(), ticks, labels);
    }

    /** The k-th of the numbers 1, 2, 5, 10, 20, ... and, for k below zero, 0.5, 0.2, 0.1, ... */
    private static double round(int k) {
        return ROUND[Math.floorMod(k, ROUND.length)] * Math.pow(10, Math.floorDiv(k, ROUND.length));
    }

    /** Beyond these a number is written by its power of ten. */
    private static final double MANY = 1e5, FEW = 1e-3;

    private static final String RAISED = "⁻⁰¹²³⁴⁵⁶⁷⁸⁹";

    private static String plain(double value) {
        if (value >= MANY || value < FEW) return power(value);
        return new java.math.BigDecimal(value)
                .round(new java.math.MathContext(2))
                .stripTrailingZeros()
                .toPlainString();
    }

    /** "2·10⁻⁵"; powers of ten alone. */
    private static String power(double value) {
        int exponent = (int) Math.floor(Math.log10(value) + SLACK);
        long times = Math.round(value / Math.pow(10, exponent));
        StringBuilder raised = new StringBuilder();
        for (char c : String.valueOf(exponent).toCharArray()) raised.append(RAISED.charAt("-0123456789".indexOf(c)));
        return (times == 1 ? "10" : times + "·10") + raised;
    }

    private static String minus(String number) {
        if (!number.startsWith("-")) return number;
        return number.matches("-0(\\.0+)?") ? number.substring(1) : "−" + number.substring(1);
    }

    /** Place of a value between the ends, 0 at the low one, 1 at the high one. */
    double place(double value) {
        if (axis.scale() == Scale.LOGARITHMIC) return Math.log(value / low) / Math.log(high / low);
        return (value - low) / (high - low);
    }
}
