package galena.signal.receiver;

/**
 * Automatic gain: the logarithm of the gain follows what the detector's voltage lacks of 1, d ln g/dt = (1 − v)/τ. After a step
 * of the level the voltage settles by 1/v = 1 + (1/v₀ − 1) e^(−t/τ), exactly. Audio slower than about 1/(2πτ) is evened out, as in a
 * real set. One stream each.
 */
public final class GainControl {
    private static final double LARGEST_LOG = 40;

    private final double share;
    private double logarithm;
    private double gain = 1;

    /**
     * @param timeConstant τ, s; infinite for a set without gain control
     * @param rate how often {@link #follow} is called a second, Hz
     */
    public GainControl(double timeConstant, double rate) {
        if (!(timeConstant > 0)) throw new IllegalArgumentException("a time constant is above zero: " + timeConstant);
        share = 1 / (timeConstant * rate);
    }

    /** The gain that stands. */
    public double gain() {
        return gain;
    }

    /** Sets the gain, as after listening for a while. */
    public void settle(double settled) {
        if (!(settled > 0)) throw new IllegalArgumentException("a gain is above zero, not " + settled);
        logarithm = Math.log(settled);
        gain = settled;
    }

    /** @param voltage mean of the detector's voltage since the last call; 1 is wanted */
    public void follow(double voltage) {
        logarithm = Math.max(-LARGEST_LOG, Math.min(LARGEST_LOG, logarithm + share * (1 - voltage)));
        gain = Math.exp(logarithm);
    }
}
