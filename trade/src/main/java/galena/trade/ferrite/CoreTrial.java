package galena.trade.ferrite;

import galena.trade.coil.Former;
import galena.trade.coil.Interval;
import galena.trade.wire.OutOfRange;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * One trial winding on an unknown core tells its permeability. A short rod tells little: its inductance is set by its
 * shape once the material's permeability is large, so the interval may be open above.
 */
public final class CoreTrial {
    private static final int MOST_STEPS = 200;

    private CoreTrial() {}

    /** What the trial says of the material. */
    public sealed interface Finding permits Identified, AtLeast, NoSuchCore {}

    /** @param permeability with what the measurement and the sizes leave open */
    public record Identified(Interval permeability) implements Finding {}

    /**
     * The reading can't be told from that of a core of boundless permeability.
     *
     * @param permeability least that the reading allows
     */
    public record AtLeast(double permeability) implements Finding {}

    /**
     * No core of that size gives the reading.
     *
     * @param least inductance that the winding can have on it (H)
     * @param most inductance that it can have (H)
     * @param remedy what to check
     */
    public record NoSuchCore(double least, double most, String remedy) implements Finding {}

    /**
     * @param former the rod with its sleeve; the material's permeability is not used
     * @param turns on it
     * @param measured inductance at low current and low frequency, self-capacitance taken out (H); what the
     *     sizes leave open and the formula's own error are added here
     */
    public static Finding rod(RodFormer former, double turns, Interval measured) {
        OutOfRange.requirePositive("measured inductance (H)", measured.low());
        RodCoil wound = former.wind(turns);
        DoubleUnaryOperator inductance = mu -> wound.withPermeability(mu).inductance();
        double most = inductance.applyAsDouble(Material.MOST_PERMEABLE);
        double likely = permeability(inductance, RodProblem.LEAST_PERMEABILITY, Math.min(most, measured.value()));
        RodFormer found = former.withMaterial(former.material().withPermeability(likely));
        double nominal = found.wind(turns).inductance(), open = wound.modelError();
        for (Former.Variation variation : found.sizeVariations()) {
            double low = variation.low().wind(turns).inductance();
            double high = variation.high().wind(turns).inductance();
            open += Math.max(Math.abs(high - nominal), Math.abs(low - nominal)) / nominal;
        }
        return find(inductance, RodProblem.LEAST_PERMEABILITY, measured.widened(open));
    }

    /**
     * @param wound the winding as it stands on the ring; the material's permeability is not used
     * @param measured inductance at low current and low frequency, self-capacitance taken out (H); formula error is
     *     added here, uncertainty of
     *     the ring's sizes is not
     */
    public static Finding toroid(ToroidCoil wound, Interval measured) {
        OutOfRange.requirePositive("measured inductance (H)", measured.low());
        double perMu = wound.inductance() / wound.material().permeability();
        Interval reading = measured.widened(ToroidCoil.modelError(measured.value() / perMu));
        return find(mu -> mu * perMu, ToroidCoil.LEAST_PERMEABILITY, reading);
    }

    private static Finding find(DoubleUnaryOperator inductance, double leastMu, Interval reading) {
        double least = inductance.applyAsDouble(leastMu), most = inductance.applyAsDouble(Material.MOST_PERMEABLE);
        if (reading.high() < least || reading.low() > most) {
            return new NoSuchCore(
                    least, most, "Check turns, sizes and the reading; a meter near self-resonance reads high.");
        }
        double low = permeability(inductance, leastMu, Math.max(least, reading.low()));
        if (reading.high() >= most) return new AtLeast(low);
        double value = permeability(inductance, leastMu, Math.max(least, reading.value()));
        return new Identified(new Interval(value, low, permeability(inductance, leastMu, reading.high())));
    }

    /** Solved in log µ, over which inductance is tamest. */
    private static double permeability(DoubleUnaryOperator inductance, double leastMu, double reading) {
        if (reading <= inductance.applyAsDouble(leastMu)) return leastMu;
        double log = new BracketingNthOrderBrentSolver(1e-10, 1e-9, 5)
                .solve(
                        MOST_STEPS,
                        u -> inductance.applyAsDouble(within(leastMu, Math.exp(u))) / reading - 1,
                        Math.log(leastMu),
                        Math.log(Material.MOST_PERMEABLE));
        return within(leastMu, Math.exp(log));
    }

    /** Undoes the rounding of exp(log µ) at the ends. */
    private static double within(double leastMu, double mu) {
        return Math.max(leastMu, Math.min(Material.MOST_PERMEABLE, mu));
    }
}
