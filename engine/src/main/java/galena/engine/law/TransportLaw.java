package galena.engine.law;

import galena.engine.part.Bipolar;

/** The transport current of a bipolar transistor at one temperature: see {@link Bipolar.Model}. Immutable. */
public final class TransportLaw {
    /** Places written by {@link #evaluate}: see there. */
    public static final int WIDTH = 7;

    private static final double BETA_EXPONENT = 1.5;

    private final double vt;
    private final double saturation;
    private final double inverseEarly;
    private final double forwardBeta;
    private final double reverseBeta;
    private final double knee;

    public TransportLaw(Bipolar.Model model, double celsius) {
        double ratio = Heat.kelvin(celsius) / Heat.REFERENCE;
        vt = Heat.thermalVoltage(celsius);
        var junction = model.emitterJunction();
        saturation = model.saturationCurrent()
                * Math.pow(ratio, junction.temperatureExponent())
                * Math.exp((ratio - 1) * junction.energyGap() / vt);
        knee = Exponential.knee(saturation, vt);
        inverseEarly = Double.isInfinite(model.earlyVoltage()) ? 0 : 1 / model.earlyVoltage();
        forwardBeta = model.forwardBeta() * Math.pow(ratio, BETA_EXPONENT);
        reverseBeta = model.reverseBeta() * Math.pow(ratio, BETA_EXPONENT);
    }

    /** How far from a junction's voltage {@code from} towards {@code to} the tangent at {@code from} can be believed, V. */
    public double led(double from, double to) {
        return Exponential.led(from, to, vt, knee);
    }

    /** Volts in which the current grows by e. */
    public double width() {
        return vt;
    }

    /**
     * Writes to {@code out[at..]}: transport current collector to emitter (A), its derivatives by v_be and by v_bc (S); the
     * base's current into the emitter junction and its derivative by v_be; into the collector junction and its derivative by
     * v_bc.
     */
    public void evaluate(double vbe, double vbc, double[] out, int at) {
        double uf = vbe / vt, ur = vbc / vt;
        double ef = Exponential.value(uf), er = Exponential.value(ur);
        double forward = saturation * (ef - 1), reverse = saturation * (er - 1);
        double gf = saturation * Exponential.slope(uf, ef) / vt, gr = saturation * Exponential.slope(ur, er) / vt;
        double early = 1 - vbc * inverseEarly;
        out[at] = (forward - reverse) * early;
        out[at + 1] = gf * early;
        out[at + 2] = -gr * early - (forward - reverse) * inverseEarly;
        out[at + 3] = forward / forwardBeta;
        out[at + 4] = gf / forwardBeta;
        out[at + 5] = reverse / reverseBeta;
        out[at + 6] = gr / reverseBeta;
    }
}
