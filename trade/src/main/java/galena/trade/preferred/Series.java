package galena.trade.preferred;

import java.util.ArrayList;
import java.util.List;

/**
 * The E series of IEC 60063 (ed. 3, 2015, tables 1 and 2): 10^(i/N) rounded to two figures up to E24, to three from E48.
 * Eight values of E24 and one of E192 keep historic figures that rounding doesn't give. E3, E6 and E12 are every eighth,
 * fourth and second value of E24; E48 and E96 every fourth and second of E192; E24 is not contained in E192.
 */
public enum Series {
    E3(3, 0.4),
    E6(6, 0.2),
    E12(12, 0.1),
    E24(24, 0.05),
    E48(48, 0.02),
    E96(96, 0.01),
    E192(192, 0.005);

    private final int steps;
    private final double tolerance;

    @SuppressWarnings("ImmutableEnumChecker") // filled once, never handed out
    private final double[] values;

    Series(int steps, double tolerance) {
        this.steps = steps;
        this.tolerance = tolerance;
        this.values = new double[steps];
        for (int i = 0; i < steps; i++) values[i] = steps <= 24 ? twoFigures(i * 24 / steps) : threeFigures(i);
    }

    /** In historic places 10^(i/24) would round to 2.6 2.9 3.2 3.5 3.8 4.2 4.6 and 8.3. */
    private static double twoFigures(int i) {
        return switch (i) {
            case 10 -> 2.7;
            case 11 -> 3.0;
            case 12 -> 3.3;
            case 13 -> 3.6;
            case 14 -> 3.9;
            case 15 -> 4.3;
            case 16 -> 4.7;
            case 22 -> 8.2;
            default -> Math.rint(10 * Math.pow(10, i / 24.0)) / 10;
        };
    }

    private double threeFigures(int i) {
        if (steps == 192 && i == 185) return 9.20; // 10^(185/192) = 9.194 would round to 9.19
        return Math.rint(100 * Math.pow(10, i / (double) steps)) / 100;
    }

    /** The values from 1 up to below 10. */
    public List<Double> decade() {
        List<Double> list = new ArrayList<>();
        for (double value : values) list.add(value);
        return list;
    }

    /**
     * Tolerance that parts of the series customarily have, as a ratio: 0.2 for E6. E3 is for parts wider than 20 %, which
     * 0.4 stands for; E192 for 0.5 % and closer. Recalled, not read again.
     */
    public double customaryTolerance() {
        return tolerance;
    }

    /** Whether a positive value belongs to the series, in any decade. */
    public boolean contains(double value) {
        return Math.abs(nearest(value) / value - 1) < 1e-9;
    }

    /** The value of the series nearest by ratio, in any decade. */
    public double nearest(double value) {
        double down = atMost(value);
        double up = atLeast(value);
        return value / down <= up / value ? down : up;
    }

    /** The greatest value of the series that isn't above {@code value}. */
    public double atMost(double value) {
        int decade = decadeOf(value);
        double mantissa = value / Math.pow(10, decade);
        int i = steps - 1;
        while (i > 0 && values[i] > mantissa * (1 + 1e-12)) i--;
        return scaled(values[i], decade);
    }

    /** The least value of the series that isn't below {@code value}. */
    public double atLeast(double value) {
        int decade = decadeOf(value);
        double mantissa = value / Math.pow(10, decade);
        for (double each : values) {
            if (each >= mantissa * (1 - 1e-12)) return scaled(each, decade);
        }
        return scaled(values[0], decade + 1);
    }

    /** Every value of the series from {@code low} to {@code high}, both included. */
    public List<Double> between(double low, double high) {
        List<Double> found = new ArrayList<>();
        for (int decade = decadeOf(low); decade <= decadeOf(high); decade++) {
            for (double each : values) {
                double value = scaled(each, decade);
                if (value >= low * (1 - 1e-12) && value <= high * (1 + 1e-12)) found.add(value);
            }
        }
        return found;
    }

    private static int decadeOf(double value) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException("preferred numbers are positive, not " + value);
        }
        int decade = (int) Math.floor(Math.log10(value));
        if (value / Math.pow(10, decade) >= 10 * (1 - 1e-12)) decade++;
        return decade;
    }

    /** Through the decimal text, so that 4.7 in the decade of −12 is the double nearest to 4.7e-12. */
    private static double scaled(double mantissa, int decade) {
        return Double.parseDouble(mantissa + "e" + decade);
    }
}
