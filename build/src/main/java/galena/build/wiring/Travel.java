package galena.build.wiring;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.quantity.Range;
import galena.build.source.BadInputException;
import galena.build.source.Problem;
import galena.build.source.Problems;
import galena.trade.coil.Interval;
import galena.trade.ferrite.CoreTrial;
import galena.trade.ferrite.Material;
import galena.trade.ferrite.RodCoil;
import galena.trade.wire.OutOfRange;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.analysis.interpolation.SplineInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialSplineFunction;

/**
 * The inductance of an adjustable coil by its position: a slug's runs evenly through its range, that of a winding slid along its
 * rod follows the rod.
 */
public final class Travel {
    private static final int PLACES = 13;
    private static final int KEPT = 32;

    /** A rod takes milliseconds to solve, and positions are tried by the thousand: what was solved is kept. */
    private static final Map<Way, PolynomialSplineFunction> SOLVED = new LinkedHashMap<>() {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Way, PolynomialSplineFunction> eldest) {
            return size() > KEPT;
        }
    };

    /** A winding, and from where to where its middle slides (m). */
    private record Way(RodCoil coil, double from, double to) {}

    private Travel() {}

    /**
     * @param coil an entry of a coil with a single inductance, a range, or a slide
     * @param position 0..1; of no effect without range or slide
     * @return before factors of tolerance, H
     */
    public static double inductance(PartEntry coil, double position) {
        Optional<Range> slug = coil.range();
        if (slug.isPresent()) return slug.get().at(position);
        double stated = coil.value().orElseThrow().value();
        return coil.slide().map(way -> stated * shareAt(coil, way, position)).orElse(stated);
    }

    /** A rod to slide on has sizes that can be reckoned. */
    static void check(Build build) throws BadInputException {
        Problems problems = new Problems();
        for (PartEntry entry : build.parts().values()) {
            if (entry.slide().isEmpty()) continue;
            try {
                inductance(entry, 1);
            } catch (OutOfRange outside) {
                problems.add(new Problem(
                        entry.values().place("slide"),
                        entry.values().path("slide"),
                        "can't be reckoned with these sizes",
                        String.valueOf(outside.getMessage())));
            }
        }
        problems.throwIfAny();
    }

    private static double shareAt(PartEntry loopstick, Range way, double position) {
        RodWinding winding = RodWinding.of(loopstick);
        Way key =
                new Way(core(loopstick, winding), way.low().value(), way.high().value());
        synchronized (SOLVED) {
            return SOLVED.computeIfAbsent(key, Travel::solve).value(Math.max(0, Math.min(1, position)));
        }
    }

    /** In the middle of the rod, of the permeability that is written or that the inductance tells. */
    private static RodCoil core(PartEntry loopstick, RodWinding winding) {
        RodCoil middle = winding.coil().at(0);
        if (loopstick.values().has("permeability")) return middle;
        Interval stated = Interval.exactly(loopstick.value().orElseThrow().value());
        CoreTrial.Finding finding =
                CoreTrial.rod(winding.former().at(0), loopstick.values().si("turns"), stated);
        return finding instanceof CoreTrial.Identified found
                ? middle.withPermeability(found.permeability().value())
                : middle.withPermeability(Material.MOST_PERMEABLE);
    }

    /** Inductance over that in the middle of the rod, by position. */
    private static PolynomialSplineFunction solve(Way way) {
        double[] positions = new double[PLACES], shares = new double[PLACES];
        double most = way.coil.inductance();
        for (int k = 0; k < PLACES; k++) {
            positions[k] = (double) k / (PLACES - 1);
            shares[k] =
                    way.coil.at(way.from + positions[k] * (way.to - way.from)).inductance() / most;
        }
        return new SplineInterpolator().interpolate(positions, shares);
    }
}
