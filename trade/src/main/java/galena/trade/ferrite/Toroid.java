package galena.trade.ferrite;

import galena.trade.wire.OutOfRange;

/**
 * A ring core by its size.
 *
 * @param outerDiameter m
 * @param innerDiameter m
 * @param height along the axis (m); for a round section, that of the section
 * @param section shape of the cut
 */
public record Toroid(double outerDiameter, double innerDiameter, double height, Section section) {
    /** Shape of the cut through the ring. */
    public enum Section {
        RECTANGULAR,
        ROUND
    }

    public Toroid {
        OutOfRange.requirePositive("inner diameter of the ring (m)", innerDiameter);
        OutOfRange.require(
                "outer diameter of the ring (m)",
                outerDiameter,
                innerDiameter * 1.01,
                innerDiameter * 20,
                "Measure again.");
        OutOfRange.requirePositive("height of the ring (m)", height);
        if (section == Section.ROUND) {
            double thick = (outerDiameter - innerDiameter) / 2;
            OutOfRange.require(
                    "height of a ring of round section (m)",
                    height,
                    thick * 0.99,
                    thick * 1.01,
                    "A round section is as high as it is thick: (outer − inner)/2.");
        }
    }

    /** A ring of rectangular section. */
    public static Toroid rectangular(double outerDiameter, double innerDiameter, double height) {
        return new Toroid(outerDiameter, innerDiameter, height, Section.RECTANGULAR);
    }

    /** A ring of round section. */
    public static Toroid round(double outerDiameter, double innerDiameter) {
        return new Toroid(outerDiameter, innerDiameter, (outerDiameter - innerDiameter) / 2, Section.ROUND);
    }

    /**
     * ∫dA/(2πr) over the section (m): inductance is µ₀µN² times this. Rectangular: h·ln(ro/ri)/2π; round: R − √(R² −
     * b²), F. W. Grover, Inductance Calculations (1946), and any text on fields.
     */
    public double reach() {
        if (section == Section.RECTANGULAR) {
            return height * Math.log(outerDiameter / innerDiameter) / (2 * Math.PI);
        }
        double big = (outerDiameter + innerDiameter) / 4, small = (outerDiameter - innerDiameter) / 4;
        return big - Math.sqrt(big * big - small * small);
    }

    /**
     * Length of one close turn (m).
     *
     * @param wireDiameter over the insulation (m)
     */
    public double turnLength(double wireDiameter) {
        double thick = (outerDiameter - innerDiameter) / 2;
        double bare = section == Section.RECTANGULAR ? 2 * (thick + height) : Math.PI * thick;
        return bare + Math.PI * wireDiameter;
    }
}
