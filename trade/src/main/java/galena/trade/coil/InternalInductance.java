package galena.trade.coil;

import galena.trade.wire.SkinEffect;
import galena.trade.wire.Wire;

/** What the field inside the wire adds to a coil, and the diameter that the current fills. */
public final class InternalInductance {
    private InternalInductance() {}

    /** Internal inductance over its low-frequency value; twisting keeps it at 1 in litz. */
    public static double ratio(Wire wire, double frequency, double celsius) {
        if (!(wire instanceof Wire.Solid solid)) return 1;
        double x = SkinEffect.argument(solid.diameter(), wire.metal().resistivity(celsius), frequency);
        return SkinEffect.internalInductanceRatio(x);
    }

    /** Diameter over which the current is spread (m): the conductor's, or that of the bundle of strands. */
    public static double conductorDiameter(Wire wire) {
        return wire instanceof Wire.Solid solid ? solid.diameter() : ((Wire.Litz) wire).bundleDiameter();
    }
}
