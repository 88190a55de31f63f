package galena.trade.device;

import static galena.trade.device.DeviceQuantity.CAPACITANCE;
import static galena.trade.device.DeviceQuantity.FORWARD_VOLTAGE;
import static galena.trade.device.DeviceQuantity.RECOVERY_TIME;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealVector;

/**
 * A diode from its printed forward voltages. V = n·VT·ln(I/IS) + Rs·I is linear in n·VT, n·VT·ln IS and Rs: three points
 * and more fit all of them by least squares; two fix two, with n of the diode's kind, or with Rs = 0 where the second
 * point would ask for a negative one; one point fixes IS. Points with a maximum only tell a worst device, and serve where
 * at least two of them are all there is.
 */
final class DiodeDerivation {
    private final DiodeData device;
    private final Working working = new Working();

    DiodeDerivation(DiodeData device) {
        this.device = device;
    }

    /** n, φ and m of a kind of diode where the sheet doesn't tell. */
    private record Kind(double emission, double potential, double grading, double capacitance, String words) {
        static Kind of(Family family) {
            return switch (family) {
                case SCHOTTKY_DIODE -> new Kind(1.05, 0.5, 0.5, 3e-12, "metal-silicon junction");
                case GERMANIUM_DIODE -> new Kind(1.3, 0.4, 0.4, 1e-12, "germanium point contact");
                default -> new Kind(1.8, 0.7, 0.33, 2e-12, "gold-doped silicon switching diode");
            };
        }
    }

    private record Point(double current, double voltage) {}

    private record Law(double saturation, double emission, double resistance, String how) {}

    ModelAnswer<DiodeModel> typical() {
        Kind kind = Kind.of(device.family());
        List<Printed> rows = new ArrayList<>();
        List<Point> points = new ArrayList<>();
        boolean worst = gather(rows, points);
        if (points.isEmpty()) {
            return new NotDerivable<>(
                    device.type(),
                    "no typical forward voltage is printed at a stated current; measure one near the current of use",
                    Set.of(FORWARD_VOLTAGE));
        }
        Law law = law(points, kind);
        if (!(law.saturation > 0) || !(law.emission > 0) || law.resistance < 0) {
            return new NotDerivable<>(
                    device.type(), "the printed forward voltages don't rise as a diode's do", Set.of(FORWARD_VOLTAGE));
        }
        String assumption = worst ? "from printed maxima: the device with the highest drop" : "mean of printed limits";
        working.from(rows, "saturation_current", law.saturation, "A", law.how, assumption);
        working.from(rows, "emission", law.emission, "", law.how, kind.words);
        working.from(rows, "series_resistance", law.resistance, "Ω", law.how, assumption);
        double potential = working.byDefault("built_in_potential", kind.potential, "V", kind.words);
        double grading = working.byDefault("grading", kind.grading, "", kind.words);
        return new Derived<>(
                new DiodeModel(
                        device.type(),
                        law.saturation,
                        law.emission,
                        law.resistance,
                        capacitance(kind, potential, grading),
                        potential,
                        grading,
                        transit()),
                working.steps());
    }

    /** Fills in usable points; true if they are maxima. */
    private boolean gather(List<Printed> rows, List<Point> points) {
        List<Printed> maxima = new ArrayList<>();
        for (Printed row : device.forwardVoltages()) {
            if (row.condition("IF").isEmpty()) continue;
            OptionalDouble typical = row.range().typicalByDifference();
            if (typical.isPresent()) {
                rows.add(row);
                points.add(new Point(row.required("IF"), typical.getAsDouble()));
            } else if (row.max().isPresent()) {
                maxima.add(row);
            }
        }
        if (!points.isEmpty() || maxima.size() < 2) return false;
        for (Printed row : maxima) {
            rows.add(row);
            points.add(new Point(row.required("IF"), row.max().orElseThrow()));
        }
        return true;
    }

    private static Law law(List<Point> points, Kind kind) {
        if (points.size() >= 3) return fitted(points);
        Point a = points.get(0);
        double nVt = kind.emission * Thermal.VOLTAGE;
        if (points.size() == 1) {
            return new Law(
                    a.current * Math.exp(-a.voltage / nVt), kind.emission, 0, "IS = I·exp(−V/(n·VT)), n by kind");
        }
        Point b = points.get(1);
        double decades = Math.log(b.current / a.current);
        double resistance = (b.voltage - a.voltage - nVt * decades) / (b.current - a.current);
        if (resistance < 0) {
            nVt = (b.voltage - a.voltage) / decades;
            return new Law(
                    a.current * Math.exp(-a.voltage / nVt), nVt / Thermal.VOLTAGE, 0, "IS and n through two points");
        }
        double junction = a.voltage - resistance * a.current;
        return new Law(
                a.current * Math.exp(-junction / nVt),
                kind.emission,
                resistance,
                "IS and Rs through two points, n by kind");
    }

    private static Law fitted(List<Point> points) {
        double[][] basis = new double[points.size()][];
        double[] voltages = new double[points.size()];
        for (int i = 0; i < basis.length; i++) {
            Point point = points.get(i);
            basis[i] = new double[] {Math.log(point.current), 1, point.current};
            voltages[i] = point.voltage;
        }
        RealVector x =
                new QRDecomposition(new Array2DRowRealMatrix(basis)).getSolver().solve(new ArrayRealVector(voltages));
        double nVt = x.getEntry(0);
        return new Law(
                Math.exp(-x.getEntry(1) / nVt), nVt / Thermal.VOLTAGE, x.getEntry(2), "IS, n and Rs by least squares");
    }

    private double capacitance(Kind kind, double potential, double grading) {
        Range c = device.range(CAPACITANCE);
        if (!c.isKnown()) {
            return working.byDefault("capacitance", kind.capacitance, "F", "none printed; " + kind.words);
        }
        double reverse = c.rows().get(0).condition("VR").orElse(0);
        return working.from(
                c.rows(),
                "capacitance",
                Depletion.zeroBias(c.typicalOrEstimate().orElseThrow(), potential, grading, reverse),
                "F",
                "C0 = C·(1 + VR/φ)^m",
                c.typicalInWords());
    }

    /** TT = trr/ln 2 for equal forward and reverse current, by charge control; none in a metal-silicon junction. */
    private double transit() {
        Range trr = device.range(RECOVERY_TIME);
        if (device.family() == Family.SCHOTTKY_DIODE) {
            return working.byDefault("transit_time", 0, "s", "majority carriers: what is printed is its capacitance");
        }
        if (!trr.isKnown()) {
            return working.byDefault("transit_time", 0, "s", "no recovery time printed; stored charge left out");
        }
        return working.from(
                trr.rows(),
                "transit_time",
                trr.typicalOrEstimate().orElseThrow() / Math.log(2),
                "s",
                "TT = trr/ln(1 + IF/IR)",
                "reverse current equal to forward; " + trr.typicalInWords());
    }
}
