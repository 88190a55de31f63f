package galena.trade.wire;

/** Wire as wound: its copper and the space it takes. */
public sealed interface Wire permits Wire.Solid, Wire.Litz {
    /** Diameter over the insulation (m): the least pitch of a winding. */
    double outerDiameter();

    /** Cross-section of metal (m²). */
    double metalArea();

    Metal metal();

    /**
     * Resistance to direct current (Ω/m).
     *
     * @param celsius temperature of the wire
     */
    default double resistancePerMetre(double celsius) {
        return metal().resistivity(celsius) / metalArea();
    }

    /**
     * One round conductor.
     *
     * @param diameter of the bare conductor (m)
     * @param outerDiameter over enamel or cotton (m), as measured
     * @param metal of the conductor
     */
    record Solid(double diameter, double outerDiameter, Metal metal) implements Wire {
        public Solid {
            OutOfRange.requirePositive("conductor diameter (m)", diameter);
            OutOfRange.require(
                    "diameter over insulation (m)",
                    outerDiameter,
                    diameter,
                    Double.MAX_VALUE,
                    "Measure over the insulation: it can't be thinner than the conductor.");
        }

        /** Copper without insulation. */
        public static Solid bareCopper(double diameter) {
            return new Solid(diameter, diameter, Metal.COPPER);
        }

        /** Copper, with the diameter measured over its enamel (m). */
        public static Solid copper(double diameter, double outerDiameter) {
            return new Solid(diameter, outerDiameter, Metal.COPPER);
        }

        @Override
        public double metalArea() {
            return Math.PI * diameter * diameter / 4;
        }
    }

    /**
     * Insulated strands so twisted that each takes every place in the bundle equally often and carries the same
     * current.
     *
     * @param strands how many, 2 or more
     * @param strandDiameter bare diameter of one strand (m)
     * @param bundleDiameter over the strands without the serving (m)
     * @param outerDiameter over the serving (m)
     * @param layFactor length of a strand over length of the bundle, 1 or a little more
     * @param metal of the strands
     */
    record Litz(
            int strands,
            double strandDiameter,
            double bundleDiameter,
            double outerDiameter,
            double layFactor,
            Metal metal)
            implements Wire {
        public Litz {
            OutOfRange.require("strands", strands, 2, Integer.MAX_VALUE, "A single strand is solid wire.");
            OutOfRange.requirePositive("strand diameter (m)", strandDiameter);
            OutOfRange.require(
                    "bundle diameter (m)",
                    bundleDiameter,
                    strandDiameter * Math.sqrt(strands),
                    Double.MAX_VALUE,
                    "The strands' metal alone fills more than that.");
            OutOfRange.require(
                    "diameter over serving (m)", outerDiameter, bundleDiameter, Double.MAX_VALUE, "Measure it again.");
            OutOfRange.require("lay factor", layFactor, 1, 1.2, "Usual twists lengthen strands by 1 to 5 %.");
        }

        @Override
        public double metalArea() {
            return strands * Math.PI * strandDiameter * strandDiameter / 4 / layFactor;
        }

        /**
         * Butterworth's k in R/Rdc = H + k (n ds/do)² G, the mean square field that strands set up in one another.
         * For 1, 2 and 3 strands and for very many it follows from geometry; 9 and 27 strands as in the handbook
         * tables, from memory; between them straight against 1/n.
         */
        public double strandConstant() {
            double inverse = 1.0 / strands;
            for (int i = 1; i < STRANDS.length; i++) {
                if (inverse >= 1 / STRANDS[i]) {
                    double above = 1 / STRANDS[i - 1], below = 1 / STRANDS[i];
                    return K[i] + (K[i - 1] - K[i]) * (inverse - below) / (above - below);
                }
            }
            throw new IllegalStateException("strands " + strands);
        }

        private static final double[] STRANDS = {1, 2, 3, 9, 27, Double.POSITIVE_INFINITY};
        private static final double[] K = {0, 1, 1.5476, 1.84, 1.92, 2};
    }
}
