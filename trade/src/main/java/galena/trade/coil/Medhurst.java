package galena.trade.coil;

import galena.trade.source.DataTable;
import org.hipparchus.analysis.interpolation.AkimaSplineInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialSplineFunction;

/**
 * Self-capacitance of a single-layer coil with one end earthed, C = H·D, H against length over diameter as measured
 * by R. G. Medhurst, Wireless Engineer 24 (1947) p. 35 and 80. His coils were wound on solid polystyrene and the
 * table claims 5 %; a former of thick or poor dielectric adds to it. Read between his points in log of the ratio.
 */
final class Medhurst {
    private static final double CLAIMED = 0.05;
    private static final PolynomialSplineFunction H = table();
    private static final double SHORTEST = 0.1;
    private static final double LONGEST = 50;

    private Medhurst() {}

    /**
     * @param length turns times pitch (m)
     * @param diameter to wire centres (m)
     */
    static SelfCapacitance of(double length, double diameter) {
        double ratio = length / diameter;
        if (ratio < SHORTEST || ratio > LONGEST) {
            return new SelfCapacitance.NotKnown(String.format(
                    java.util.Locale.ROOT,
                    "Medhurst's table holds length/diameter 0.1 to 50, this coil has %.3g. Measure two resonances instead.",
                    ratio));
        }
        return new SelfCapacitance.Known(
                Interval.within(picofaradPerCentimetre(ratio) * 1e-10 * diameter, CLAIMED),
                "R. G. Medhurst, Wireless Engineer 24 (1947), one end earthed");
    }

    static double picofaradPerCentimetre(double lengthOverDiameter) {
        return H.value(Math.log(lengthOverDiameter));
    }

    private static PolynomialSplineFunction table() {
        var rows =
                DataTable.resource(Medhurst.class, "medhurst-capacitance.csv").rows();
        double[] x = rows.stream()
                .mapToDouble(r -> Math.log(r.required("length_over_diameter")))
                .toArray();
        double[] h = rows.stream()
                .mapToDouble(r -> r.required("picofarad_per_centimetre"))
                .toArray();
        return new AkimaSplineInterpolator().interpolate(x, h);
    }
}
