package galena.signal.modulation;

/** The definitions of modulation depth, as fractions: 0.8 is 80 %. */
public final class Depth {
    private Depth() {}

    /** Positive peak from the highest envelope and the carrier, same unit. */
    public static double positivePeak(double highest, double carrier) {
        return highest / carrier - 1;
    }

    /** Negative peak from the lowest envelope (negative past 100 %) and the carrier, same unit. */
    public static double negativePeak(double lowest, double carrier) {
        return 1 - lowest / carrier;
    }

    /** Depth of a screen or a trapezoid, (A − B)/(A + B), from its largest and smallest height, same unit. */
    public static double symmetrical(double largest, double smallest) {
        return (largest - smallest) / (largest + smallest);
    }

    /** Level of each sideband (dBc) at depth m of an undistorted tone: 20 log(m/2). */
    public static double sidebandLevel(double depth) {
        return 20 * Math.log10(depth / 2);
    }

    /** Depth from the amplitudes of the two first sidebands and the carrier, same unit. */
    public static double fromSidebands(double lower, double upper, double carrier) {
        return (lower + upper) / carrier;
    }
}
