package galena.engine.law;

import galena.engine.part.Junction;

/** A pn junction at one temperature: see {@link Junction} for the equations. Immutable. */
public final class JunctionLaw {
    /** Places written by {@link #evaluate}: current (A), conductance (S), charge (C), capacitance (F). */
    public static final int WIDTH = 4;

    private final double saturation;
    private final double slopeVoltage;
    private final double leakage;
    private final double transit;
    private final double c0;
    private final double phi;
    private final double m;
    private final double bend;
    private final double chargeAtBend;
    private final double capacitanceAtBend;
    private final double capacitanceSlope;
    private final double knee;

    public JunctionLaw(Junction junction, double celsius) {
        double t = Heat.kelvin(celsius), ratio = t / Heat.REFERENCE;
        double vt = Heat.thermalVoltage(celsius);
        double n = junction.emission();
        slopeVoltage = n * vt;
        // I_S(T): intrinsic carrier density, Sze eq. 1-19, with the emission coefficient on the activation energy
        saturation = junction.saturationCurrent()
                * Math.pow(ratio, junction.temperatureExponent() / n)
                * Math.exp((ratio - 1) * junction.energyGap() / slopeVoltage);
        knee = Exponential.knee(saturation, slopeVoltage);
        leakage = junction.leakage();
        transit = junction.transitTime();
        m = junction.grading();
        // built-in potential from the intrinsic density; C₀ φ^m is the doping's and stays
        double moved = junction.builtIn() * ratio - 3 * vt * Math.log(ratio) - junction.energyGap() * (ratio - 1);
        phi = Math.max(moved, 0.1 * junction.builtIn());
        c0 = junction.zeroBiasCapacitance() * Math.pow(junction.builtIn() / phi, m);
        bend = junction.forwardFraction() * phi;
        double left = 1 - junction.forwardFraction();
        capacitanceAtBend = c0 * Math.pow(left, -m);
        capacitanceSlope = capacitanceAtBend * m / (phi * left);
        chargeAtBend = depletionCharge(bend);
    }

    /** q(v) below the bend: ∫C₀(1 − v/φ)^−m. */
    private double depletionCharge(double v) {
        double w = 1 - v / phi;
        return m == 1 ? -c0 * phi * Math.log(w) : c0 * phi / (1 - m) * (1 - Math.pow(w, 1 - m));
    }

    /** How far from the voltage {@code from} towards {@code to} the tangent at {@code from} can be believed, V. */
    public double led(double from, double to) {
        return Exponential.led(from, to, slopeVoltage, knee);
    }

    /** Volts in which the current grows by e. */
    public double width() {
        return slopeVoltage;
    }

    /** Writes current, conductance, charge and capacitance at the voltage v to {@code out[at..at+3]}. */
    public void evaluate(double v, double[] out, int at) {
        double u = v / slopeVoltage;
        double e = Exponential.value(u);
        double shockley = saturation * (e - 1);
        double slope = saturation * Exponential.slope(u, e) / slopeVoltage;
        out[at] = shockley + leakage * v;
        out[at + 1] = slope + leakage;
        out[at + 2] = transit * shockley;
        out[at + 3] = transit * slope;
        if (c0 > 0) addDepletion(v, out, at);
    }

    private void addDepletion(double v, double[] out, int at) {
        if (v <= bend) {
            double w = 1 - v / phi;
            if (m == 0.5) {
                double root = Math.sqrt(w);
                out[at + 2] += 2 * c0 * phi * (1 - root);
                out[at + 3] += c0 / root;
            } else {
                double c = c0 * Math.pow(w, -m);
                out[at + 2] += m == 1 ? -c0 * phi * Math.log(w) : phi / (1 - m) * (c0 - c * w);
                out[at + 3] += c;
            }
        } else {
            double over = v - bend;
            out[at + 2] += chargeAtBend + over * (capacitanceAtBend + 0.5 * capacitanceSlope * over);
            out[at + 3] += capacitanceAtBend + capacitanceSlope * over;
        }
    }
}
