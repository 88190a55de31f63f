package galena.trade.coil;

import galena.trade.wire.OutOfRange;

/**
 * Series resistance of a coil by cause. Dielectric loss and radiation are not in it.
 *
 * @param frequency Hz
 * @param reactance 2πf·L, the shift included (Ω)
 * @param inductanceShift what eddy currents in neighbouring turns take from the inductance, zero or less (H); {@link
 *     Winding#inductance} leaves it out
 * @param dc resistance to direct current (Ω)
 * @param skin added by each wire's own field (Ω)
 * @param proximity added by the field of the other turns, and of the core, across the wire (Ω)
 * @param core loss in the core, seen in series (Ω)
 * @param lowFactor least the total may be, over {@link #total}
 * @param highFactor most it may be, over {@link #total}
 */
public record Losses(
        double frequency,
        double reactance,
        double inductanceShift,
        double dc,
        double skin,
        double proximity,
        double core,
        double lowFactor,
        double highFactor) {
    public Losses {
        OutOfRange.requirePositive("frequency (Hz)", frequency);
        OutOfRange.requirePositive("reactance (ohm)", reactance);
        OutOfRange.requirePositive("direct-current resistance (ohm)", dc);
        OutOfRange.require("lowFactor", lowFactor, 0.01, 1, "The interval must hold the figure, and a Q an upper end.");
        OutOfRange.require("highFactor", highFactor, 1, 100, "The interval must hold the figure.");
    }

    /**
     * The same losses with a wider interval.
     *
     * @param less resistance by which the total may be smaller still (Ω)
     * @param more resistance by which it may be greater still (Ω)
     */
    public Losses widened(double less, double more) {
        double low = lowFactor - less / total(), high = highFactor + more / total();
        return new Losses(frequency, reactance, inductanceShift, dc, skin, proximity, core, low, high);
    }

    /** Series resistance (Ω). */
    public double total() {
        return dc + skin + proximity + core;
    }

    /** Series resistance with what it may lie between (Ω). */
    public Interval resistance() {
        return new Interval(total(), total() * lowFactor, total() * highFactor);
    }

    /** Unloaded Q = ωL/R, far below self-resonance, without dielectric loss: an upper figure for a real coil. */
    public Interval q() {
        double q = reactance / total();
        return new Interval(q, q / highFactor, q / lowFactor);
    }
}
