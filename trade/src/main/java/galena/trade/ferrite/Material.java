package galena.trade.ferrite;

import galena.trade.coil.Interval;
import galena.trade.source.Basis;
import galena.trade.source.DataTable;
import galena.trade.wire.OutOfRange;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Core material at small signals.
 *
 * @param name grade
 * @param permeability initial relative permeability, 1 for none
 * @param tolerance of the permeability, as a fraction
 * @param losses loss factors by rising frequency; none for a lossless or unknown core
 * @param remark what else the source says
 * @param source where the figures come from
 * @param basis what stands behind them
 */
public record Material(
        String name,
        double permeability,
        double tolerance,
        List<LossPoint> losses,
        String remark,
        String source,
        Basis basis) {
    /**
     * @param frequency Hz
     * @param factor tan δ/µ
     */
    public record LossPoint(double frequency, double factor) {
        public LossPoint {
            OutOfRange.requirePositive("frequency of a loss factor (Hz)", frequency);
            OutOfRange.require("loss factor tan δ/µ", factor, 1e-8, 0.1, "Ferrites for tuned coils have 1e-5 to 1e-3.");
        }
    }

    /** Highest permeability for which the rod's answers have been checked. */
    public static final double MOST_PERMEABLE = 5000;

    /** A loss factor is taken to hold this far, in ratio of frequency, from where it was given. */
    private static final double REACH = 2;

    private static final List<Material> TABLE = DataTable.resource(Material.class, "materials.csv").rows().stream()
            .map(row -> new Material(
                    row.text("name"),
                    row.required("mu_i"),
                    row.required("tolerance"),
                    lossPoints(row.text("loss_factors")),
                    row.text("remark"),
                    row.text("source"),
                    Basis.named(row.text("basis"))))
            .toList();

    public Material {
        OutOfRange.require("permeability", permeability, 1, MOST_PERMEABLE, "Relative permeability is meant.");
        OutOfRange.require("tolerance of permeability", tolerance, 0, 0.9, "Give 0.2 for 20 %.");
        losses = List.copyOf(losses);
    }

    /** A core known by its permeability alone: the loss is not known, and a Q with it is refused. */
    public static Material ofPermeability(double permeability) {
        return new Material("unnamed", permeability, 0, List.of(), "", "given", Basis.BUILDER);
    }

    /** A core given by its complex permeability µ′ − jµ″ at one frequency (Hz). */
    public static Material complex(double real, double imaginary, double frequency) {
        var loss = new LossPoint(frequency, imaginary / (real * real));
        return new Material("unnamed", real, 0, List.of(loss), "", "given", Basis.BUILDER);
    }

    /** Every grade held. */
    public static List<Material> table() {
        return TABLE;
    }

    /** The grade of that name, as in the table. */
    public static Optional<Material> named(String name) {
        return TABLE.stream().filter(m -> m.name().equals(name)).findFirst();
    }

    /** The same grade with another permeability. */
    public Material withPermeability(double other) {
        return new Material(name, other, tolerance, losses, remark, source, basis);
    }

    /** The same grade with the permeability that a trial winding found, and its uncertainty; see {@link CoreTrial}. */
    public Material measured(Interval found) {
        double wider = Math.max(found.high() - found.value(), found.value() - found.low()) / found.value();
        return new Material(name, found.value(), Math.min(0.9, wider), losses, remark, source, basis);
    }

    /**
     * Loss factor tan δ/µ at a frequency: straight in logarithms between given points, between their figures or
     * a factor of two; the nearest one's up to an octave beyond them, within as much as the frequency differs.
     *
     * @param frequency Hz
     * @throws OutOfRange where nothing is known of the loss
     */
    public Interval lossFactor(double frequency) {
        if (losses.isEmpty()) {
            throw new OutOfRange("frequency for the core's loss (Hz)", frequency, 0, 0, "No loss factor is given.");
        }
        LossPoint first = losses.get(0), last = losses.get(losses.size() - 1);
        OutOfRange.require(
                "frequency for the loss of " + name + " (Hz)",
                frequency,
                first.frequency() / REACH,
                last.frequency() * REACH,
                "Give a loss factor nearer to it.");
        if (frequency <= first.frequency()) return stretched(first, first.frequency() / frequency);
        if (frequency >= last.frequency()) return stretched(last, frequency / last.frequency());
        int i = 1;
        while (losses.get(i).frequency() < frequency) i++;
        LossPoint below = losses.get(i - 1), above = losses.get(i);
        double share = Math.log(frequency / below.frequency()) / Math.log(above.frequency() / below.frequency());
        double factor = below.factor() * Math.pow(above.factor() / below.factor(), share);
        double low = Math.max(Math.min(below.factor(), above.factor()), factor / REACH);
        double high = Math.min(Math.max(below.factor(), above.factor()), factor * REACH);
        return new Interval(factor, Math.min(low, factor), Math.max(high, factor));
    }

    private static Interval stretched(LossPoint point, double ratio) {
        return new Interval(point.factor(), point.factor() / ratio, point.factor() * ratio);
    }

    private static List<LossPoint> lossPoints(String cell) {
        List<LossPoint> points = new ArrayList<>();
        Arrays.stream(cell.split(" "))
                .map(p -> p.split(":"))
                .forEach(p -> points.add(new LossPoint(Double.parseDouble(p[0]), Double.parseDouble(p[1]))));
        return points;
    }
}
