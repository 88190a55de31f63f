package galena.build.wiring;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.quantity.Engineering;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Problem;
import galena.build.source.Problems;
import galena.trade.field.FreeSpace;
import galena.trade.field.ShortWire;

/**
 * A wire of a build as an aerial. What it radiates is a resistance that rises with the square of frequency; here it is that at
 * the carrier of the intent, at harmonics a little too small, beside tens of ohms of ground loss.
 */
public final class AerialWire {
    /** Where a build names no carrier: the middle of medium waves, Hz. */
    private static final double USUAL_CARRIER = 1e6;

    private static final double LONGEST = 0.1;

    private AerialWire() {}

    /** @param entry of kind {@link PartKind#WIRE} */
    public static ShortWire of(PartEntry entry) {
        double length = entry.value().orElseThrow().value();
        return new ShortWire(
                length,
                entry.values().si("diameter") / 2,
                entry.values().si("base_height", 0),
                entry.values().si("top_capacitance", 0));
    }

    /** Ground loss and radiation in series (Ω). */
    static double resistance(Build build, PartEntry entry) {
        return entry.values().si("ground_loss") + of(entry).radiationResistance(carrier(build));
    }

    private static double carrier(Build build) {
        return build.intent().carrier().map(Quantity::value).orElse(USUAL_CARRIER);
    }

    /** A wire longer than a tenth of the wavelength is more than its capacitance. */
    static void check(Build build) throws BadInputException {
        double longest = LONGEST * FreeSpace.wavelength(carrier(build));
        Problems problems = new Problems();
        for (PartEntry entry : build.parts().values()) {
            if (entry.kind() != PartKind.WIRE || of(entry).height() <= longest) continue;
            problems.add(new Problem(
                    entry.values().place(PartKind.WIRE.key()),
                    entry.values().path(PartKind.WIRE.key()),
                    "is too long for " + Engineering.print(carrier(build), Unit.HERTZ, 3),
                    "A wire is short up to a tenth of the wavelength, here " + Engineering.print(longest, Unit.METRE, 2)
                            + "."));
        }
        problems.throwIfAny();
    }
}
