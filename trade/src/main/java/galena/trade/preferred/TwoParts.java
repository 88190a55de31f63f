package galena.trade.preferred;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What one or two parts out of a drawer make, nearest to a wanted value first. */
public final class TwoParts {
    private TwoParts() {}

    /** How values add: resistors and coils in series, capacitors in parallel. */
    public enum Kind {
        RESISTANCE,
        INDUCTANCE,
        CAPACITANCE
    }

    /** How the two are joined. */
    public enum Joined {
        ALONE,
        SERIES,
        PARALLEL
    }

    /**
     * Parts of one value in the drawer.
     *
     * @param value in SI
     * @param tolerance ± as a ratio
     * @param count how many there are
     */
    public record Stock(double value, double tolerance, int count) {
        public Stock {
            if (!(value > 0) || Double.isInfinite(value)) {
                throw new IllegalArgumentException("a part has a value above zero, not " + value);
            }
            if (!(tolerance >= 0 && tolerance < 1)) {
                throw new IllegalArgumentException("a tolerance is a ratio from 0 to 1, not " + tolerance);
            }
            if (count < 1) throw new IllegalArgumentException("a drawer holds one part or more, not " + count);
        }
    }

    /**
     * @param joined how
     * @param first the larger, or the only one
     * @param second the other; equal to {@code first} when alone
     * @param value of both together, in SI
     * @param error value over wanted, less one
     * @param tolerance greatest deviation of both together from {@code value} as a ratio, when both stand at their limit
     */
    public record Combination(Joined joined, Stock first, Stock second, double value, double error, double tolerance) {}

    /**
     * @param wanted value in SI
     * @param kind of part
     * @param drawer what there is
     * @param most how many combinations to give back
     * @return nearest first; of equals the one with fewer parts
     */
    public static List<Combination> nearest(double wanted, Kind kind, List<Stock> drawer, int most) {
        if (!(wanted > 0)) throw new IllegalArgumentException("a wanted value is positive, not " + wanted);
        List<Combination> all = new ArrayList<>();
        for (int i = 0; i < drawer.size(); i++) {
            Stock a = drawer.get(i);
            all.add(new Combination(Joined.ALONE, a, a, a.value, a.value / wanted - 1, a.tolerance));
            for (int j = i; j < drawer.size(); j++) {
                if (j == i && a.count < 2) continue;
                all.add(joined(Joined.SERIES, kind, a, drawer.get(j), wanted));
                all.add(joined(Joined.PARALLEL, kind, a, drawer.get(j), wanted));
            }
        }
        all.sort(Comparator.<Combination>comparingDouble(c -> Math.abs(c.error))
                .thenComparing(c -> c.joined)
                .thenComparingDouble(c -> c.tolerance));
        return List.copyOf(all.subList(0, Math.min(most, all.size())));
    }

    private static Combination joined(Joined joined, Kind kind, Stock a, Stock b, double wanted) {
        boolean adds = (joined == Joined.SERIES) != (kind == Kind.CAPACITANCE);
        double sum = a.value + b.value;
        double value = adds ? sum : a.value * b.value / sum;
        // d(sum)/sum weighs tolerances by value; of a·b/(a+b) by the other's value.
        double tolerance = adds
                ? (a.value * a.tolerance + b.value * b.tolerance) / sum
                : (b.value * a.tolerance + a.value * b.tolerance) / sum;
        boolean ordered = a.value >= b.value;
        return new Combination(joined, ordered ? a : b, ordered ? b : a, value, value / wanted - 1, tolerance);
    }
}
