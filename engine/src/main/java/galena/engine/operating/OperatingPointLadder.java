package galena.engine.operating;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.part.Part;
import java.util.List;

/**
 * Finds an operating point by the methods of {@link OperatingPoint.Rung}, in that order. The result names the rung that held;
 * when none does, the first rung's trouble is reported.
 */
public final class OperatingPointLadder {
    private static final double SMALLEST_SUPPLY_STEP = 1e-4;
    private static final double FIRST_RATE = 1e9;
    private static final double LAST_RATE = 1e-3;
    private static final double FASTEST_RATE = 1e14;
    private static final int MOST_SWITCH_ON_STEPS = 500;

    private OperatingPointLadder() {}

    /** The operating point with all sources at rest, from cold. The circuit's structure must be free of fatal faults. */
    public static OperatingPoint climb(Equations equations) {
        double[] x = new double[equations.stride()];
        DampedNewton newton = new DampedNewton(equations);
        if (newton.improve(x)) return found(equations, newton, x, OperatingPoint.Rung.NEWTON);
        int worst = newton.worstRow(x);
        double imbalance = newton.imbalance(worst);

        x = new double[equations.stride()];
        newton = new DampedNewton(equations);
        double reached = raiseSupply(newton, x);
        if (reached == 1) return found(equations, newton, x, OperatingPoint.Rung.SUPPLY_STEPPING);

        x = new double[equations.stride()];
        newton = new DampedNewton(equations);
        if (switchOn(newton, x)) return found(equations, newton, x, OperatingPoint.Rung.DAMPED_SWITCH_ON);
        return new OperatingPoint.NotFound(place(equations, worst), partAt(equations, worst), imbalance, reached);
    }

    /** The operating point near a known one, as after a small change of a value; climbs the ladder when that fails. */
    public static OperatingPoint near(Equations equations, double[] start) {
        if (start.length == equations.stride()) {
            double[] x = start.clone();
            DampedNewton newton = new DampedNewton(equations);
            if (newton.improve(x)) return found(equations, newton, x, OperatingPoint.Rung.NEWTON);
        }
        return climb(equations);
    }

    private static OperatingPoint.Found found(
            Equations equations, DampedNewton newton, double[] x, OperatingPoint.Rung rung) {
        return new OperatingPoint.Found(equations, x, rung, newton.iterations(), newton.largestImbalance(x));
    }

    /** Raises the supply as far as it goes; the share reached. */
    private static double raiseSupply(DampedNewton newton, double[] x) {
        double share = 0, step = 0.1;
        while (share < 1 && step >= SMALLEST_SUPPLY_STEP) {
            double next = Math.min(1, share + step);
            double[] trial = x.clone();
            newton.scaleSupply(next);
            if (newton.improve(trial)) {
                System.arraycopy(trial, 0, x, 0, x.length);
                share = next;
                step *= 2;
            } else {
                step /= 4;
            }
        }
        return share;
    }

    /** Implicit Euler steps that grow until the charges no longer matter; damped so strongly that no oscillation builds up. */
    private static boolean switchOn(DampedNewton newton, double[] x) {
        double rate = FIRST_RATE;
        for (int steps = 0; rate > LAST_RATE; steps++) {
            if (steps == MOST_SWITCH_ON_STEPS) return false; // a circuit may find no rest at any damping
            double[] trial = x.clone();
            newton.holdCharges(newton.charges(x), rate);
            if (newton.improve(trial)) {
                System.arraycopy(trial, 0, x, 0, x.length);
                rate /= 4;
            } else {
                rate *= 8;
                if (rate > FASTEST_RATE) return false;
            }
        }
        newton.holdCharges(new double[x.length], 0);
        return newton.improve(x);
    }

    private static String place(Equations equations, int row) {
        return row <= equations.nets() ? "net " + equations.name(row) : equations.name(row);
    }

    /** The device at a net, or the part whose row it is. */
    private static String partAt(Equations equations, int row) {
        String name = equations.name(row);
        List<Part> parts = equations.circuit().parts();
        for (Part part : parts) if (name.contains(part.name()) && row > equations.nets()) return part.name();
        return parts.stream()
                .filter(part -> part.nets().contains(name) && part.nets().size() > 2)
                .findFirst()
                .or(() -> parts.stream()
                        .filter(part -> part.nets().contains(name))
                        .findFirst())
                .map(Part::name)
                .orElse(Circuit.GROUND);
    }
}
