package galena.signal.receiver;

/**
 * What a set with an envelope detector is made of.
 *
 * @param circuits tuned circuits before the detector
 * @param bandwidth between their 3 dB points, Hz
 * @param mistuned Hz that the carrier lies above the filter's middle
 * @param detector RC of the detector's capacitor and its audio load, s
 * @param audioShare that load's resistance for audio over that for direct current
 * @param gainControl its time constant, s; infinite for none
 */
public record ReceiverSettings(
        int circuits, double bandwidth, double mistuned, double detector, double audioShare, double gainControl) {
    /** The same, tuned beside the carrier. */
    public ReceiverSettings mistunedBy(double hertz) {
        return new ReceiverSettings(circuits, bandwidth, hertz, detector, audioShare, gainControl);
    }
}
