package galena.build.spread;

import galena.build.wiring.Unknown;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * What halving one tolerance would buy. The carrier before trimming and the distortion are modelled as linear in the draws,
 * by least squares over the drawn builds; a tolerance is halved in the model and the builds are counted anew. Failures of other
 * kinds stay as they are.
 */
final class Tightening {
    private static final double CLEAN = 0.05;
    private static final int MOST = 6;

    private Tightening() {}

    static List<SpreadReport.Tighten> of(List<Unknown> unknowns, List<Drawn> drawn) {
        int numbers = Sampler.numbers(unknowns);
        if (drawn.size() < 3 * numbers) return List.of();
        Optional<double[]> asSet = fit(drawn, Drawn.Quantity.AS_SET, numbers);
        Optional<double[]> distortion = fit(drawn, Drawn.Quantity.DISTORTION, numbers);
        List<SpreadReport.Tighten> buys = new ArrayList<>();
        long now = drawn.stream().filter(Drawn::isGood).count();
        int at = 0;
        for (Unknown unknown : unknowns) {
            int first = at, last = at + unknown.numbers();
            at = last;
            long good = drawn.stream()
                    .filter(d -> good(d, first, last, asSet, distortion))
                    .count();
            if (good > now) buys.add(new SpreadReport.Tighten(unknown.what(), (double) good / drawn.size()));
        }
        buys.sort(Comparator.comparingDouble(b -> -b.yield()));
        return buys.subList(0, Math.min(MOST, buys.size()));
    }

    private static boolean good(Drawn d, int first, int last, Optional<double[]> asSet, Optional<double[]> distortion) {
        for (String failure : d.failures()) {
            boolean trim = failure.contains("does not reach the channel");
            boolean distorts = failure.equals("the wanted depth distorts");
            if (trim && asSet.isPresent()) {
                // with less of what put it off, the stop lies nearer to the channel by as much, or beyond it
                double missed = value(d, Drawn.Quantity.MISSED), moved = missed - half(d, first, last, asSet.get());
                if (moved * missed > 0) return false;
            } else if (distorts && distortion.isPresent()) {
                if (value(d, Drawn.Quantity.DISTORTION) - half(d, first, last, distortion.get()) > CLEAN) return false;
            } else {
                return false;
            }
        }
        return true;
    }

    private static double value(Drawn d, Drawn.Quantity quantity) {
        return d.values().getOrDefault(quantity, 0.0);
    }

    /** Half of what the numbers first to last do to a quantity in this build, by the model. */
    private static double half(Drawn d, int first, int last, double[] slopes) {
        double sum = 0;
        for (int j = first; j < last; j++) sum += slopes[j] * (d.numbers()[j] - 0.5);
        return sum / 2;
    }

    /** Slopes by each number of the unit cube; empty when too few builds have the quantity. */
    private static Optional<double[]> fit(List<Drawn> drawn, Drawn.Quantity quantity, int numbers) {
        List<Drawn> have =
                drawn.stream().filter(d -> d.values().containsKey(quantity)).toList();
        if (have.size() < 2 * numbers) return Optional.empty();
        RealMatrix a = MatrixUtils.createRealMatrix(have.size(), numbers + 1);
        RealVector b = new ArrayRealVector(have.size());
        for (int r = 0; r < have.size(); r++) {
            for (int j = 0; j < numbers; j++) a.setEntry(r, j, have.get(r).numbers()[j] - 0.5);
            a.setEntry(r, numbers, 1);
            b.setEntry(r, value(have.get(r), quantity));
        }
        return Optional.of(new QRDecomposition(a).getSolver().solve(b).toArray());
    }
}
