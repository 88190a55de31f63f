package galena.trade.device;

import static galena.trade.device.DeviceQuantity.CAPACITANCE;
import static galena.trade.device.DeviceQuantity.QUALITY_FACTOR;
import static galena.trade.device.DeviceQuantity.SERIES_RESISTANCE;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;

/** A tuning diode. */
public record TuningDiodeData(Sheet sheet) implements Device {
    /** φ (V) of a plain junction, where two points leave it open. */
    static final double DEFAULT_POTENTIAL = 0.7;

    /**
     * Grading above which a junction is steeper than abrupt. Medium-wave types are: their capacitance falls nearly
     * exponentially, as the one type here with three printed points shows, and φ = 0.7 V between two points would halve
     * the capacitance in the middle.
     */
    static final double STEEP = 0.6;

    /** Search bounds of φ (V): steep junctions run nearly exponentially, which a large φ describes. */
    private static final double LEAST = 0.3;

    private static final double MOST = 100;

    public TuningDiodeData {
        if (sheet.family() != Family.TUNING_DIODE) {
            throw new IllegalArgumentException(sheet.type() + " is no tuning diode");
        }
    }

    /** Every printed capacitance, each at its own reverse voltage VR. */
    public List<Printed> capacitances() {
        return all(CAPACITANCE);
    }

    private record Point(double reverse, double capacitance) {}

    private record Line(double lnZeroBias, double grading, double squares) {}

    /**
     * Parameters of the typical device: C0 and m (and φ, from three points on) by least squares in ln C through the
     * typical values or the geometric means of printed limits.
     */
    public ModelAnswer<TuningDiodeModel> typical() {
        List<Printed> rows = capacitances().stream()
                .filter(row -> row.condition("VR").isPresent()
                        && row.range().typicalByRatio().isPresent())
                .sorted(Comparator.comparingDouble(row -> row.required("VR")))
                .toList();
        List<Point> points = new ArrayList<>();
        for (Printed row : rows) {
            points.add(
                    new Point(row.required("VR"), row.range().typicalByRatio().orElseThrow()));
        }
        long voltages = points.stream().map(Point::reverse).distinct().count();
        if (voltages < 2) {
            return new NotDerivable<>(
                    type(), "capacitance is known at fewer than two voltages; measure another", Set.of(CAPACITANCE));
        }
        double potential = voltages == 2 ? assumedPotential(points) : bestPotential(points);
        Line line = line(points, potential);
        Working working = new Working();
        double zero = working.from(
                rows, "capacitance", Math.exp(line.lnZeroBias), "F", "ln C = ln C0 − m·ln(1 + VR/φ)", "least squares");
        double grading = working.from(rows, "grading", line.grading, "", "as above", "describes the curve");
        if (voltages == 2) {
            working.byDefault(
                    "built_in_potential",
                    potential,
                    "V",
                    "two points leave it open; a steep junction falls almost exponentially");
        } else {
            working.from(rows, "built_in_potential", potential, "V", "as above", "describes the curve");
        }
        return new Derived<>(
                new TuningDiodeModel(
                        type(),
                        zero,
                        potential,
                        grading,
                        series(points.get(0), working),
                        points.get(0).reverse,
                        points.get(points.size() - 1).reverse),
                working.steps());
    }

    private static double assumedPotential(List<Point> points) {
        return line(points, DEFAULT_POTENTIAL).grading > STEEP ? MOST : DEFAULT_POTENTIAL;
    }

    private static double bestPotential(List<Point> points) {
        UnivariateFunction misfit = logarithm -> line(points, Math.exp(logarithm)).squares;
        return Math.exp(new BrentOptimizer(1e-9, 1e-12)
                .optimize(
                        new MaxEval(500),
                        new UnivariateObjectiveFunction(misfit),
                        GoalType.MINIMIZE,
                        new SearchInterval(Math.log(LEAST), Math.log(MOST)))
                .getPoint());
    }

    /** Straight line through ln C against ln(1 + VR/φ). */
    private static Line line(List<Point> points, double potential) {
        double n = points.size(), sx = 0, sy = 0, sxx = 0, sxy = 0;
        for (Point point : points) {
            double x = Math.log1p(point.reverse / potential), y = Math.log(point.capacitance);
            sx += x;
            sy += y;
            sxx += x * x;
            sxy += x * y;
        }
        double slope = (n * sxy - sx * sy) / (n * sxx - sx * sx);
        double start = (sy - slope * sx) / n;
        double squares = 0;
        for (Point point : points) {
            double miss = start + slope * Math.log1p(point.reverse / potential) - Math.log(point.capacitance);
            squares += miss * miss;
        }
        return new Line(start, -slope, squares);
    }

    /** Rs as printed, else from Q = 1/(2π·f·C·Rs) at the lowest voltage. */
    private double series(Point lowest, Working working) {
        Range printed = range(SERIES_RESISTANCE);
        if (printed.isKnown()) {
            return working.from(
                    printed.rows(),
                    "series_resistance",
                    printed.typicalOrEstimate().orElseThrow(),
                    "Ω",
                    "as printed",
                    printed.typicalInWords());
        }
        Range q = range(QUALITY_FACTOR);
        if (q.isKnown() && q.rows().get(0).condition("f").isPresent()) {
            double quality = (q.typ().isPresent() ? q.typ() : q.min().isPresent() ? q.min() : q.max()).orElseThrow();
            double omega = 2 * Math.PI * q.rows().get(0).required("f");
            return working.from(
                    q.rows(),
                    "series_resistance",
                    1 / (omega * lowest.capacitance * quality),
                    "Ω",
                    "Rs = 1/(2π·f·C·Q)",
                    "printed limit of Q taken as it stands");
        }
        return working.byDefault("series_resistance", 1, "Ω", "none printed; medium-wave types stay below 2.5 Ω");
    }

    /**
     * Least, typical and greatest device: C0 in proportion to the limits printed at the lowest voltage, for the ratio
     * between voltages is held far closer than the capacitance.
     */
    public ModelAnswer<List<TuningDiodeModel>> corners() {
        ModelAnswer<TuningDiodeModel> typical = typical();
        if (typical instanceof NotDerivable<TuningDiodeModel> missing) {
            return new NotDerivable<>(missing.type(), missing.reason(), missing.wanted());
        }
        Derived<TuningDiodeModel> derived = (Derived<TuningDiodeModel>) typical;
        TuningDiodeModel model = derived.model();
        for (Printed row : capacitances()) {
            if (row.condition("VR").isEmpty() || row.required("VR") != model.lowestReverse()) continue;
            if (row.min().isEmpty() || row.max().isEmpty()) continue;
            double middle = row.range().typicalByRatio().orElseThrow();
            return new Derived<>(
                    List.of(
                            model.scaled(row.min().getAsDouble() / middle),
                            model,
                            model.scaled(row.max().getAsDouble() / middle)),
                    derived.steps());
        }
        return new NotDerivable<>(
                type(), "capacitance at the lowest voltage is not printed with both limits", Set.of(CAPACITANCE));
    }
}
