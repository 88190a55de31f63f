package galena.engine.law;

import galena.engine.part.OpAmp;

/**
 * The currents of an {@link OpAmp}. All are smooth or have at most a step in their second derivative:
 *
 * <ul>
 *   <li>input stage: I·tanh(gm·v/I), the law of a differential pair of bipolars, exact; I = slew rate times C;
 *   <li>stops: from {@value #KNEE} V short of each, a current that grows with the square and is I at the stop, so that no drive
 *       moves the output beyond. Further inside there is none;
 *   <li>output stage: i = I_max·tanh(u/(R·I_max)), from the positive rail where it leaves the output, into the negative
 *       where it enters, shared as (√(i² + i₀²) ± i)/2;
 *   <li>what else it draws: steady, and none where the rails lie at one voltage.
 * </ul>
 */
public final class AmplifierLaw {
    /** C, farads: an internal scale that cancels from every outside figure, of the size such amplifiers have. */
    public static final double COMPENSATION = 30e-12;

    /** V short of a stop where it begins to hold. */
    public static final double KNEE = 0.1;

    /** Share of the supply current that idles in the output stage. */
    private static final double IDLES = 0.2;
    /** Rails nearer than about this leave the output nowhere to go, V; keeps the stops apart while a supply is raised. */
    private static final double NARROW = 0.05;

    private static final double SUPPLIED = 1;

    private final double gm;
    private final double greatest;
    private final double swingLow;
    private final double swingHigh;
    private final double outputConductance;
    private final double outputCurrent;
    private final double idle;
    private final double steady;

    public AmplifierLaw(OpAmp.Model model) {
        gm = transconductance(model);
        greatest = model.slewRate() * COMPENSATION;
        swingLow = model.swingLow();
        swingHigh = model.swingHigh();
        outputConductance = 1 / model.outputResistance();
        outputCurrent = model.outputCurrent();
        idle = Math.max(IDLES * model.supplyCurrent(), 1e-9);
        steady = (1 - IDLES / 2) * model.supplyCurrent();
    }

    /** Of the input stage at rest, S. */
    public static double transconductance(OpAmp.Model model) {
        return 2 * Math.PI * model.gainBandwidth() * COMPENSATION;
    }

    /** Writes the current into the compensation capacitor (A) and its derivative (S) at a difference of the inputs. */
    public void input(double difference, double[] out) {
        double t = Math.tanh(gm * difference / greatest);
        out[0] = greatest * t;
        out[1] = gm * (1 - t * t);
    }

    /**
     * Writes what the stops take from the capacitor: current of the upper (A), its derivatives by the capacitor's voltage, the
     * positive and the negative rail; then the same four of the lower, whose current is given to the capacitor.
     */
    public void stops(double v, double plus, double minus, double[] out) {
        double room = plus - swingHigh - minus - swingLow;
        double root = Math.sqrt(0.25 * room * room + NARROW * NARROW);
        double half = 0.5 * (0.5 * room + root), slope = 0.25 * (1 + 0.5 * room / root);
        double middle = 0.5 * (plus - swingHigh + minus + swingLow);
        stop(v - (middle + half), out, 0, -0.5 - slope, -0.5 + slope);
        stop(middle - half - v, out, 4, 0.5 - slope, 0.5 + slope);
        out[5] = -out[5];
    }

    /** @param beyond the stop, V; its derivatives by the rails are given */
    private void stop(double beyond, double[] out, int at, double byPlus, double byMinus) {
        double u = Math.max(0, beyond + KNEE) / KNEE, g = 2 * greatest * u / KNEE;
        out[at] = greatest * u * u;
        out[at + 1] = g;
        out[at + 2] = g * byPlus;
        out[at + 3] = g * byMinus;
    }

    /** Writes what the positive rail gives to the output (A), its derivative (S); then the same two of what the negative takes. */
    public void output(double difference, double[] out) {
        double t = Math.tanh(outputConductance * difference / outputCurrent);
        double i = outputCurrent * t, g = outputConductance * (1 - t * t), root = Math.sqrt(i * i + idle * idle);
        double larger = 0.5 * (root + Math.abs(i)), smaller = 0.25 * idle * idle / larger; // no difference of equals
        double given = i > 0 ? larger : smaller, taken = i > 0 ? smaller : larger;
        out[0] = given;
        out[1] = g * given / root;
        out[2] = taken;
        out[3] = -g * taken / root;
    }

    /** Writes the steady current from rail to rail (A) and its derivative (S). */
    public void drawn(double between, double[] out) {
        double root = Math.sqrt(between * between + SUPPLIED * SUPPLIED);
        out[0] = steady * between / root;
        out[1] = steady * SUPPLIED * SUPPLIED / (root * root * root);
    }
}
