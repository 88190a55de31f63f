package galena.trade.device;

/**
 * Parameters of the square-law JFET. For an N-channel device in saturation ID = I0·(1 − VGS/VP)²·(1 + λ·VDS); each gate
 * junction carries IS·(exp(V/(n·VT)) − 1) and the charge of C0/(1−V/φ)^m. A P-channel device has every sign turned.
 *
 * @param type type number
 * @param channel N or P
 * @param saturationCurrent I0 (A): drain current at VGS = 0, carried back to VDS = 0. The printed IDSS is I0·(1 + λ·VDS)
 *     at its test voltage
 * @param pinchOff VP (V), negative for N, positive for P
 * @param channelLengthModulation λ (1/V)
 * @param gateSourceCapacitance at zero bias (F)
 * @param gateDrainCapacitance at zero bias (F)
 * @param builtInPotential φ of both gate junctions (V)
 * @param grading m of both gate junctions
 * @param gateSaturationCurrent IS of each gate junction (A)
 * @param gateEmission n of each gate junction
 */
public record JfetModel(
        String type,
        Channel channel,
        double saturationCurrent,
        double pinchOff,
        double channelLengthModulation,
        double gateSourceCapacitance,
        double gateDrainCapacitance,
        double builtInPotential,
        double grading,
        double gateSaturationCurrent,
        double gateEmission) {
    /** Kind of channel. */
    public enum Channel {
        N,
        P
    }

    public JfetModel {
        if (!(saturationCurrent > 0)) throw new IllegalArgumentException("saturation current must be positive");
        if (channel == Channel.N ? !(pinchOff < 0) : !(pinchOff > 0)) {
            throw new IllegalArgumentException("pinch-off of an N channel is negative, of a P channel positive");
        }
    }

    /** gm at VGS = 0 (S), with the drain at {@code drainSource} volts (magnitude). */
    public double forwardTransconductance(double drainSource) {
        return 2 * saturationCurrent / Math.abs(pinchOff) * (1 + channelLengthModulation * drainSource);
    }

    /** Drain current at VGS = 0 (A) with the drain at {@code drainSource} volts (magnitude): the sheet's IDSS. */
    public double currentAtZeroGate(double drainSource) {
        return saturationCurrent * (1 + channelLengthModulation * drainSource);
    }

    /** |VGS| (V) at which a saturated device carries {@code drainCurrent} (A) at {@code drainSource} volts. */
    public double gateVoltageAt(double drainCurrent, double drainSource) {
        return Math.abs(pinchOff) * (1 - Math.sqrt(drainCurrent / currentAtZeroGate(drainSource)));
    }

    JfetModel withChannelAs(double saturationCurrent, double pinchOff) {
        return new JfetModel(
                type,
                channel,
                saturationCurrent,
                pinchOff,
                channelLengthModulation,
                gateSourceCapacitance,
                gateDrainCapacitance,
                builtInPotential,
                grading,
                gateSaturationCurrent,
                gateEmission);
    }
}
