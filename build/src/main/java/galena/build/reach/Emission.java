package galena.build.reach;

import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import galena.trade.field.Radiator;

/**
 * What goes out at one frequency, unmodulated.
 *
 * @param order 1 for the carrier, 2 for its second harmonic
 * @param radiator with the typical current, rms
 * @param current in the aerial, rms
 * @param low natural logarithm of the least field over the typical one
 * @param high of the greatest
 */
public record Emission(int order, Radiator radiator, Figure.Known current, double low, double high) {
    private static final String BASIS = "predicted, parts and aerial within tolerance, 95 %";

    public double frequency() {
        return radiator.frequency();
    }

    /** "carrier" or "harmonic 3". */
    public String name() {
        return order == 1 ? "carrier" : "harmonic " + order;
    }

    /**
     * A field of it with this emission's interval.
     *
     * @param value typical, in the unit's SI unit
     * @param at where: "4 m, broadside"
     */
    Figure.Known field(double value, Unit unit, String quantity, String at) {
        return new Figure.Known(
                value,
                unit,
                Math.min(value, value * Math.exp(low)),
                Math.max(value, value * Math.exp(high)),
                BASIS,
                quantity + " of the " + name() + ", rms",
                at);
    }

    /** dB by which the field may be lower, zero or less. */
    double lowDecibels() {
        return 20 / Math.log(10) * low;
    }

    /** dB by which the field may be higher. */
    double highDecibels() {
        return 20 / Math.log(10) * high;
    }
}
