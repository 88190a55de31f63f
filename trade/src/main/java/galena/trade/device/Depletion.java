package galena.trade.device;

/**
 * Depletion capacitance C0/(1−V/φ)^m, V positive forward, continued by its tangent above φ/2: the law the circuit
 * equations use, so that a derived C0 gives back the printed capacitance.
 */
final class Depletion {
    private Depletion() {}

    /**
     * @param zeroBias C0 (F)
     * @param potential φ (V)
     * @param grading m
     * @param forward junction voltage, positive forward (V)
     * @return capacitance (F)
     */
    static double capacitance(double zeroBias, double potential, double grading, double forward) {
        double knee = potential / 2;
        if (forward <= knee) return zeroBias * Math.pow(1 - forward / potential, -grading);
        double atKnee = Math.pow(0.5, -grading);
        return zeroBias * (atKnee + 2 * grading / potential * atKnee * (forward - knee));
    }

    /** C0 (F) that gives {@code printed} (F) at {@code reverse} volts of reverse bias. */
    static double zeroBias(double printed, double potential, double grading, double reverse) {
        return printed / capacitance(1, potential, grading, -reverse);
    }
}
