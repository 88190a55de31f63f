package galena.build.substitute;

import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * The devices of a kind that work in a place: each number by itself until they stop working, and what the tests then show. The
 * readings' windows are drawn in towards the typical device until devices at all their corners work.
 */
final class WindowSearch {
    private static final int SHRINKS = 4;
    private static final int NEWTON_STEPS = 40;
    private static final double BEYOND = 1.04;
    private static final double STEP = 1e-5, LARGEST = 0.5, SOLVED = 1e-7;

    private final Law law;
    private final Specimen specimen;
    private final double[] typical;

    private WindowSearch(Law law, Specimen specimen) {
        this.law = law;
        this.specimen = specimen;
        typical = law.parameters().stream().mapToDouble(Law.Parameter::typical).toArray();
    }

    /** Empty where even the typical specimen does not work. */
    static Optional<DeviceWindow> of(Law law, Specimen specimen) {
        WindowSearch search = new WindowSearch(law, specimen);
        return search.works(search.typical) ? Optional.of(search.window()) : Optional.empty();
    }

    private boolean works(double[] numbers) {
        return specimen.works(law.text(numbers));
    }

    private double[] with(int k, double number) {
        double[] numbers = typical.clone();
        numbers[k] = number;
        return numbers;
    }

    private DeviceWindow window() {
        int count = typical.length;
        List<Figure> edges = IntStream.range(0, 2 * count)
                .parallel()
                .mapToObj(e -> edge(e / 2, e % 2 == 1))
                .toList();
        List<DeviceWindow.Axis> axes = new ArrayList<>();
        double[][] readings = new double[count][];
        for (int k = 0; k < count; k++) {
            Law.Parameter p = law.parameters().get(k);
            Figure low = edges.get(2 * k), high = edges.get(2 * k + 1);
            axes.add(new DeviceWindow.Axis(
                    p.words(), stated(p, known(p.typical(), p.unit())), stated(p, low), stated(p, high)));
            double a = law.reading(k, with(k, Edge.value(low, p.least()))),
                    b = law.reading(k, with(k, Edge.value(high, p.most())));
            readings[k] = new double[] {Math.min(a, b), Math.max(a, b)};
        }
        return new DeviceWindow(axes, test(readings));
    }

    private Figure edge(int k, boolean up) {
        Law.Parameter p = law.parameters().get(k);
        return Edge.find(
                p.typical(),
                up ? p.most() : p.least(),
                number -> works(with(k, number)),
                p.sign(),
                p.unit(),
                (up ? "most " : "least ") + p.words());
    }

    private static Figure known(double value, Unit unit) {
        return new Figure.Known(value, unit, value, value, "typical of the type that stands there", "typical", "");
    }

    /** With the sign that people give it. */
    private static Figure stated(Law.Parameter p, Figure figure) {
        if (p.sign() > 0 || !(figure instanceof Figure.Known k)) return figure;
        return new Figure.Known(-k.value(), k.unit(), -k.high(), -k.low(), k.basis(), k.quantity(), k.at());
    }

    private DeviceWindow.Test test(double[][] widest) {
        double[] shown = IntStream.range(0, typical.length)
                .mapToDouble(k -> law.reading(k, typical))
                .toArray();
        for (int shrink = 0; shrink < SHRINKS; shrink++) {
            double share = 1 - (double) shrink / SHRINKS;
            double[][] ends = new double[shown.length][];
            for (int k = 0; k < shown.length; k++)
                ends[k] = new double[] {
                    shown[k] * Math.pow(widest[k][0] / shown[k], share),
                    shown[k] * Math.pow(widest[k][1] / shown[k], share)
                };
            if (!cornersWork(ends)) continue;
            String proof = shown.length == 1
                    ? "Devices at both ends were solved in the build, and work"
                    : "Devices at every corner of the readings were solved in the build, and work";
            return test(shown, ends, proof + drawnIn(share));
        }
        double[][] match = new double[shown.length][];
        for (int k = 0; k < shown.length; k++) match[k] = new double[] {shown[k], shown[k]};
        return test(shown, match, "The corners work for no window worth naming: match the typical readings.");
    }

    private static String drawnIn(double share) {
        return share == 1 ? "." : "; the windows were drawn in to " + Math.round(100 * share) + " % for that.";
    }

    private boolean cornersWork(double[][] ends) {
        return IntStream.range(0, 1 << ends.length)
                .parallel()
                .mapToObj(corner -> IntStream.range(0, ends.length)
                        .mapToDouble(k -> ends[k][corner >> k & 1])
                        .toArray())
                .allMatch(readings ->
                        showing(law, readings).filter(n -> !works(n)).isEmpty());
    }

    /** The numbers of the device that shows some readings, by Newton's method on logarithms; empty where none does. */
    static Optional<double[]> showing(Law law, double[] readings) {
        double[] numbers =
                law.parameters().stream().mapToDouble(Law.Parameter::typical).toArray();
        for (int k = 0; k < NEWTON_STEPS; k++) {
            double[] missing = missing(law, readings, numbers);
            if (largest(missing) < SOLVED) return Optional.of(numbers);
            double[] step = step(law, readings, numbers, missing);
            double longest = largest(step);
            if (!Double.isFinite(longest)) return Optional.empty();
            double share = Math.min(1, LARGEST / longest);
            for (int j = 0; j < step.length; j++)
                numbers[j] = within(law.parameters().get(j), numbers[j] * Math.exp(share * step[j]));
        }
        return Optional.empty();
    }

    private static double largest(double[] of) {
        double most = 0;
        for (double each : of) most = Math.max(most, Double.isNaN(each) ? Double.POSITIVE_INFINITY : Math.abs(each));
        return most;
    }

    /** Not beyond all that was asked: such a device nobody would meet. */
    private static double within(Law.Parameter p, double number) {
        return Math.max(p.least() / BEYOND, Math.min(p.most() * BEYOND, number));
    }

    private static double[] missing(Law law, double[] readings, double[] numbers) {
        double[] missing = new double[readings.length];
        for (int k = 0; k < missing.length; k++) missing[k] = Math.log(readings[k] / law.reading(k, numbers));
        return missing;
    }

    private static double[] step(Law law, double[] readings, double[] numbers, double[] missing) {
        int n = numbers.length;
        RealMatrix slopes = MatrixUtils.createRealMatrix(n, n);
        for (int j = 0; j < n; j++) {
            double[] moved = numbers.clone();
            moved[j] *= 1 + STEP;
            double[] there = missing(law, readings, moved);
            for (int k = 0; k < n; k++) slopes.setEntry(k, j, (missing[k] - there[k]) / STEP);
        }
        try {
            return new LUDecomposition(slopes)
                    .getSolver()
                    .solve(new ArrayRealVector(missing))
                    .toArray();
        } catch (MathRuntimeException singular) {
            return new double[] {Double.POSITIVE_INFINITY};
        }
    }

    private DeviceWindow.Test test(double[] shown, double[][] ends, String proof) {
        List<Figure.Known> readings = new ArrayList<>();
        for (int k = 0; k < shown.length; k++) {
            double high = ends[k][1] >= law.saturates() ? Law.SUPPLY : ends[k][1];
            readings.add(new Figure.Known(
                    shown[k],
                    Unit.VOLT,
                    Math.min(ends[k][0], shown[k]),
                    Math.max(high, shown[k]),
                    "test circuit solved",
                    law.shown().get(k),
                    ""));
        }
        String words = law.leavesOut().isEmpty() ? proof : proof + " " + law.leavesOut();
        return new DeviceWindow.Test(law.steps(), readings, words);
    }
}
