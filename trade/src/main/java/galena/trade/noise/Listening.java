package galena.trade.noise;

import galena.trade.field.FreeSpace;
import galena.trade.field.Radiator;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a receiver makes of a transmission. An envelope detector fed a carrier E and noise En in its bandwidth, well above
 * its threshold, gives an audio signal-to-noise of m·E/En: the in-phase noise has the power of the whole.
 *
 * @param transmitter dipole of the unmodulated carrier, rms
 * @param receiver class of set, turned for the best reading
 * @param noise where it stands, in the receiver's bandwidth
 * @param depth modulation depth of the programme's loud passages, 0..1
 */
public record Listening(Radiator transmitter, ReceiverClass receiver, NoiseField noise, double depth) {
    /** Audio signal-to-noise (dB) at which listening is still pleasant: common practice, a quiet room and music. */
    public static final double PLEASANT = 30;

    /** Audio signal-to-noise (dB) at which speech is still followed with ease: 26 dB, ITU-R BS.703 (recalled). */
    public static final double USABLE = 26;

    /** Carrier over noise (dB) under which an envelope detector loses the programme in the noise. */
    public static final double THRESHOLD = 10;

    private static final double NEAREST = 0.1;
    private static final double FARTHEST = 100_000;
    private static final int BISECTIONS = 80;

    public Listening {
        if (!(depth > 0 && depth <= 1)) throw new IllegalArgumentException("a depth lies from 0 to 1, not at " + depth);
    }

    /** How it sounds. */
    public enum Quality {
        PLEASANT,
        USABLE,
        NOISY,
        /** The detector is below its threshold. */
        LOST,
        /** The carrier is less than the set plays from. */
        TOO_WEAK
    }

    /**
     * @param distance (m)
     * @param field carrier as the set takes it up (V/m, rms; H times 377 Ω for a rod)
     * @param signalToNoise of the audio, median noise (dB)
     * @param worst with the noise of the noisiest tenth of the time (dB)
     * @param best with the noise of the quietest tenth (dB)
     * @param quality by the median
     */
    public record Heard(
            double distance, double field, double signalToNoise, double worst, double best, Quality quality) {}

    /** What is heard at a distance (m). */
    public Heard at(double distance) {
        double field = field(distance);
        double snr = signalToNoise(field, noise.median());
        return new Heard(
                distance,
                field,
                snr,
                signalToNoise(field, noise.high()),
                signalToNoise(field, noise.low()),
                quality(field, snr));
    }

    private double field(double distance) {
        return receiver.pickup() == ReceiverClass.Pickup.MAGNETIC
                ? transmitter.worstH(distance) * FreeSpace.IMPEDANCE
                : transmitter.worstE(distance);
    }

    /** dB; a silent place with a silent set would be infinite, and a set without noise is never that quiet. */
    private double signalToNoise(double field, double place) {
        double total = Math.max(1e-12, Math.hypot(place, receiver.ownNoise()));
        return 20 * Math.log10(Math.max(1e-30, depth * field) / total);
    }

    private Quality quality(double field, double snr) {
        if (field < receiver.leastField()) return Quality.TOO_WEAK;
        if (snr >= PLEASANT) return Quality.PLEASANT;
        if (snr >= USABLE) return Quality.USABLE;
        return snr - 20 * Math.log10(depth) >= THRESHOLD ? Quality.NOISY : Quality.LOST;
    }

    /** Distance (m) at which listening stops being pleasant; none if it isn't even at 0.1 m. */
    public OptionalDouble pleasantDistance() {
        return distanceFor(PLEASANT);
    }

    /**
     * Distance (m) up to which the set plays with at least this audio signal-to-noise (dB), at the median noise; none if
     * not even at 0.1 m. The worst-orientation field falls with distance, so there is one crossing.
     */
    public OptionalDouble distanceFor(double signalToNoise) {
        if (!plays(NEAREST, signalToNoise)) return OptionalDouble.empty();
        double low = Math.log(NEAREST);
        double high = Math.log(FARTHEST);
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = (low + high) / 2;
            if (plays(Math.exp(middle), signalToNoise)) low = middle;
            else high = middle;
        }
        return OptionalDouble.of(Math.exp(low));
    }

    private boolean plays(double distance, double signalToNoise) {
        double field = field(distance);
        return field >= receiver.leastField() && signalToNoise(field, noise.median()) >= signalToNoise;
    }

    /** What limits the set at a distance (m): its own noise, the place's noise, or the least carrier it plays from. */
    public Optional<Limit> limit(double distance) {
        Heard heard = at(distance);
        if (heard.quality() == Quality.PLEASANT) return Optional.empty();
        if (heard.quality() == Quality.TOO_WEAK) return Optional.of(Limit.LEAST_FIELD);
        return Optional.of(noise.median() >= receiver.ownNoise() ? Limit.NOISE_OF_THE_PLACE : Limit.OWN_NOISE);
    }

    /** What keeps listening from being pleasant. */
    public enum Limit {
        OWN_NOISE,
        NOISE_OF_THE_PLACE,
        LEAST_FIELD
    }
}
