package galena.trade.device;

/**
 * A dual-gate MOSFET as two square-law channels in series: the lower, steered by gate 1, between source and the inner
 * node; the upper, steered by gate 2, between the inner node and drain. Each saturated: I = K·(VG − VS − VT)²·(1 +
 * λ·VD−S).
 *
 * @param type type number
 * @param lowerCoefficient K of the lower channel (A/V²)
 * @param lowerCutoff VT of the lower channel, gate 1 to source (V), negative for a depletion type
 * @param upperCoefficient K of the upper channel (A/V²)
 * @param upperCutoff VT of the upper channel, gate 2 to inner node (V)
 * @param channelLengthModulation λ (1/V)
 * @param gate1Capacitance gate 1 to source (F)
 * @param feedbackCapacitance drain to gate 1 (F)
 * @param gate2Capacitance gate 2 to ground, which it is decoupled to (F)
 * @param outputCapacitance drain to source (F)
 * @param islandCapacitance inner node to source (F): what holds its voltage while the lower channel is shut
 */
public record DualGateMosfetModel(
        String type,
        double lowerCoefficient,
        double lowerCutoff,
        double upperCoefficient,
        double upperCutoff,
        double channelLengthModulation,
        double gate1Capacitance,
        double feedbackCapacitance,
        double gate2Capacitance,
        double outputCapacitance,
        double islandCapacitance) {
    /** Drain current (A) with gate 1 at the source, gate 2 well open and the lower channel saturated. */
    public double saturationCurrent() {
        return lowerCoefficient * lowerCutoff * lowerCutoff;
    }

    /** The same mask with another implant: both cutoffs move alike until IDSS is this (A). */
    public DualGateMosfetModel withSaturationCurrent(double idss) {
        double cutoff = -Math.sqrt(idss / lowerCoefficient);
        return new DualGateMosfetModel(
                type,
                lowerCoefficient,
                cutoff,
                upperCoefficient,
                upperCutoff + cutoff - lowerCutoff,
                channelLengthModulation,
                gate1Capacitance,
                feedbackCapacitance,
                gate2Capacitance,
                outputCapacitance,
                islandCapacitance);
    }
}
