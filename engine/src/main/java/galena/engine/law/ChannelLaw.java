package galena.engine.law;

import galena.engine.part.Jfet;
import galena.engine.part.Mosfet;

/**
 * The square-law channel at one temperature, symmetric in drain and source: see {@link Jfet.Model}. The current and its
 * first derivatives are continuous; the second derivatives step at cutoff and at pinch-off, which is the law's nature.
 * Immutable.
 */
public final class ChannelLaw {
    /** Places written by {@link #evaluate}: drain current (A), ∂i/∂v_gs, ∂i/∂v_ds (S). */
    public static final int WIDTH = 3;

    /** Mobility falls as T^−2 in a JFET's lightly doped channel, as T^−1.5 at a MOSFET's surface (common practice). */
    private static final double JFET_MOBILITY_EXPONENT = -2;

    private static final double MOSFET_MOBILITY_EXPONENT = -1.5;
    private static final double JFET_PINCH_OFF_PER_KELVIN = -2.2e-3;
    private static final double MOSFET_THRESHOLD_PER_KELVIN = -2e-3;

    private final double beta;
    private final double threshold;
    private final double lambda;

    private ChannelLaw(double beta, double threshold, double lambda) {
        this.beta = beta;
        this.threshold = threshold;
        this.lambda = lambda;
    }

    public static ChannelLaw of(Jfet.Model model, double celsius) {
        double ratio = Heat.kelvin(celsius) / Heat.REFERENCE;
        return new ChannelLaw(
                model.beta() * Math.pow(ratio, JFET_MOBILITY_EXPONENT),
                model.pinchOff() + JFET_PINCH_OFF_PER_KELVIN * (Heat.kelvin(celsius) - Heat.REFERENCE),
                model.channelLengthModulation());
    }

    public static ChannelLaw of(Mosfet.Model model, double celsius) {
        double ratio = Heat.kelvin(celsius) / Heat.REFERENCE;
        return new ChannelLaw(
                model.beta() * Math.pow(ratio, MOSFET_MOBILITY_EXPONENT),
                model.threshold() + MOSFET_THRESHOLD_PER_KELVIN * (Heat.kelvin(celsius) - Heat.REFERENCE),
                model.channelLengthModulation());
    }

    /** Where a gate's voltage against either end of the channel passes this, the law's second derivative steps, V. */
    public double threshold() {
        return threshold;
    }

    /** Writes the current into the drain and its derivatives by v_gs and v_ds to {@code out[at..at+2]}. */
    public void evaluate(double vgs, double vds, double[] out, int at) {
        if (vds >= 0) {
            forward(vgs, vds, out, at);
            return;
        }
        forward(vgs - vds, -vds, out, at); // drain and source change places: i(v_gs, v_ds) = −i(v_gd, v_sd)
        double current = out[at], gm = out[at + 1], gds = out[at + 2];
        out[at] = -current;
        out[at + 1] = -gm;
        out[at + 2] = gm + gds;
    }

    private void forward(double vgs, double vds, double[] out, int at) {
        double u = vgs - threshold;
        if (u <= 0) {
            out[at] = 0;
            out[at + 1] = 0;
            out[at + 2] = 0;
            return;
        }
        double stretch = 1 + lambda * vds;
        if (vds < u) {
            double square = vds * (2 * u - vds);
            out[at] = beta * square * stretch;
            out[at + 1] = 2 * beta * vds * stretch;
            out[at + 2] = beta * (2 * (u - vds) * stretch + lambda * square);
        } else {
            out[at] = beta * u * u * stretch;
            out[at + 1] = 2 * beta * u * stretch;
            out[at + 2] = beta * u * u * lambda;
        }
    }
}
