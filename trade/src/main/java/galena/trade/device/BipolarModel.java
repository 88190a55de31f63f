package galena.trade.device;

/**
 * Parameters of the transport-form bipolar transistor: IC = IS·(exp(VBE/VT) − exp(VBC/VT))·(1 + VCE/VA) −
 * IS/βR·(exp(VBC/VT) − 1), charges TF·IF and TR·IR and two depletion junctions C0/(1−V/φ)^m.
 *
 * @param type type number
 * @param polarity NPN or PNP
 * @param saturationCurrent IS (A) at 25 °C
 * @param forwardBeta βF near the current the model was asked for
 * @param reverseBeta βR
 * @param earlyVoltage VA (V)
 * @param forwardTransitTime TF (s)
 * @param reverseTransitTime TR (s)
 * @param emitterCapacitance of the emitter junction at zero bias (F)
 * @param emitterPotential φ of the emitter junction (V)
 * @param emitterGrading m of the emitter junction
 * @param collectorCapacitance of the collector junction at zero bias (F)
 * @param collectorPotential φ of the collector junction (V)
 * @param collectorGrading m of the collector junction
 */
public record BipolarModel(
        String type,
        Polarity polarity,
        double saturationCurrent,
        double forwardBeta,
        double reverseBeta,
        double earlyVoltage,
        double forwardTransitTime,
        double reverseTransitTime,
        double emitterCapacitance,
        double emitterPotential,
        double emitterGrading,
        double collectorCapacitance,
        double collectorPotential,
        double collectorGrading) {
    /** Layer order. */
    public enum Polarity {
        NPN,
        PNP
    }

    BipolarModel withForwardBeta(double beta) {
        return new BipolarModel(
                type,
                polarity,
                saturationCurrent,
                beta,
                reverseBeta,
                earlyVoltage,
                forwardTransitTime,
                reverseTransitTime,
                emitterCapacitance,
                emitterPotential,
                emitterGrading,
                collectorCapacitance,
                collectorPotential,
                collectorGrading);
    }
}
