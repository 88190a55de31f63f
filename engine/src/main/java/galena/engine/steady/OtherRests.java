package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.startup.Linearised;
import java.util.ArrayList;
import java.util.List;

/**
 * Other operating points than a known one that runs off: Newton's method from that point with one net after the other pulled up and
 * down. Those that run off themselves are left out: nothing rests there.
 */
final class OtherRests {
    /** Shares of the supply by which a net is pulled: a fraction of a junction's voltage, and most of the supply. */
    private static final double[] PULLS = {0.05, -0.05, 0.5, -0.5};

    private static final double SAME_VOLTS = 1e-4;

    private final Watch watch;

    OtherRests(Watch watch) {
        this.watch = watch;
    }

    List<OperatingPoint.Found> of(OperatingPoint.Found point) {
        Equations equations = point.equations();
        double supply = 0;
        for (int j = 1; j <= equations.nets(); j++) supply = Math.max(supply, Math.abs(point.x()[j]));
        List<OperatingPoint.Found> others = new ArrayList<>();
        for (int j = 1; j <= equations.nets(); j++) {
            for (double pull : PULLS) {
                watch.check();
                double[] start = point.x().clone();
                start[j] += pull * supply;
                if (!(OperatingPointLadder.near(equations, start) instanceof OperatingPoint.Found found)) continue;
                if (same(found, point) || others.stream().anyMatch(o -> same(o, found))) continue;
                if (Linearised.at(equations, found.x()).runaways().length == 0) others.add(found);
            }
        }
        return others;
    }

    private static boolean same(OperatingPoint.Found a, OperatingPoint.Found b) {
        for (int j = 1; j <= a.equations().nets(); j++) {
            if (Math.abs(a.x()[j] - b.x()[j]) > SAME_VOLTS) return false;
        }
        return true;
    }
}
