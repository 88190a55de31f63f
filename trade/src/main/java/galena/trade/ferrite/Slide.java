package galena.trade.ferrite;

import galena.trade.coil.Interval;
import galena.trade.wire.OutOfRange;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/** Sliding a winding along its rod as an adjustment: inductance is greatest in the middle and falls to either end. */
public final class Slide {
    private static final int MOST_STEPS = 200;

    private Slide() {}

    /** Where the winding must stand. */
    public sealed interface Place permits At, OutOfReach {}

    /**
     * @param position of the winding's middle from the rod's, either way, with what the uncertainty leaves open (m)
     * @param slope change of inductance for a step outwards (H/m), zero or less
     */
    public record At(Interval position, double slope) implements Place {}

    /**
     * @param least inductance that sliding reaches, middle of the winding at the rod's end (H)
     * @param most inductance in the middle of the rod (H)
     */
    public record OutOfReach(double least, double most) implements Place {}

    /**
     * @param coil in any place
     * @param target inductance wanted, low frequency (H)
     * @param calibration measured over reckoned inductance with its uncertainty, {@code Interval.exactly(1)} for none
     */
    public static Place to(RodCoil coil, double target, Interval calibration) {
        OutOfRange.requirePositive("wanted inductance (H)", target);
        OutOfRange.requirePositive("low end of the calibration", calibration.low());
        double end = coil.rod().length() / 2;
        double most = coil.at(0).inductance(), least = coil.at(end).inductance();
        double reckoned = target / calibration.value();
        if (reckoned > most || reckoned < least) {
            return new OutOfReach(least * calibration.value(), most * calibration.value());
        }
        double place = placeOf(coil, reckoned, least, most, end);
        double inner = placeOf(coil, target / calibration.low(), least, most, end);
        double outer = placeOf(coil, target / calibration.high(), least, most, end);
        double step = 1e-3 * end, from = Math.max(0, place - step), to = Math.min(end, place + step);
        double slope = (coil.at(to).inductance() - coil.at(from).inductance()) / (to - from);
        return new At(new Interval(place, inner, outer), slope * calibration.value());
    }

    private static double placeOf(RodCoil coil, double reckoned, double least, double most, double end) {
        if (reckoned >= most) return 0;
        if (reckoned <= least) return end;
        return new BracketingNthOrderBrentSolver(1e-9, end * 1e-9, 5)
                .solve(MOST_STEPS, z -> coil.at(z).inductance() / reckoned - 1, 0, end);
    }
}
