package galena.build.reach;

import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import galena.trade.field.Radiator;
import galena.trade.noise.Environment;
import galena.trade.noise.Listening;
import galena.trade.noise.NoiseField;
import galena.trade.noise.ReceiverClass;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What one class of set makes of the build.
 *
 * @param kind in a few words: "rod set"
 * @param receiver in more words
 * @param verified whether what is held of this class has been read rather than recalled or taken from custom
 * @param noise of the place and the set together, as a field (V/m, rms)
 * @param wanted at the distance that the intent wants
 * @param neighbour at the neighbour's distance
 * @param pleasant distance up to which listening is pleasant, or why there is none
 * @param usable distance up to which speech is followed with ease, or why there is none
 * @param curve audio signal-to-noise with distance
 */
public record Hearing(
        String kind,
        String receiver,
        boolean verified,
        Figure.Known noise,
        Optional<Heard> wanted,
        Optional<Heard> neighbour,
        Figure pleasant,
        Figure usable,
        List<Heard> curve) {
    /** Audio signal-to-noise (dB) from which listening is pleasant. */
    public static final double PLEASANT = Listening.PLEASANT;

    private static final String BASIS =
            "predicted; build within tolerance, noise from its noisiest to its quietest tenth";

    public Hearing {
        curve = List.copyOf(curve);
    }

    /**
     * @param distance (m)
     * @param signalToNoise of the audio (dB)
     * @param sound in words
     * @param silent whether the set doesn't play at all
     */
    public record Heard(double distance, Figure.Known signalToNoise, String sound, boolean silent) {}

    /** @param depth of loud passages, 0 to 1 */
    static List<Hearing> of(
            Emission carrier,
            double depth,
            Surroundings surroundings,
            Optional<Double> wanted,
            List<Double> distances) {
        List<Hearing> all = new ArrayList<>();
        for (ReceiverClass receiver : ReceiverClass.standard())
            all.add(new Ear(carrier, depth, surroundings, receiver).hearing(wanted, distances));
        return all;
    }

    /** One class of set in its place. */
    private static final class Ear {
        private final Emission carrier;
        private final double depth;
        private final ReceiverClass receiver;
        private final NoiseField noise;
        private final Surroundings surroundings;

        Ear(Emission carrier, double depth, Surroundings surroundings, ReceiverClass receiver) {
            this.carrier = carrier;
            this.depth = depth;
            this.receiver = receiver;
            this.surroundings = surroundings;
            this.noise = surroundings.noise().isPresent()
                    ? NoiseField.measured(surroundings.noise().getAsDouble())
                    : NoiseField.of(
                            surroundings.environment(),
                            carrier.frequency(),
                            receiver.bandwidth(),
                            surroundings.indoors());
        }

        Hearing hearing(Optional<Double> wanted, List<Double> distances) {
            OptionalDouble next = surroundings.neighbour();
            return new Hearing(
                    receiver.word().replace("wire_fed", "wire-fed").replace('_', ' '),
                    receiver.name(),
                    receiver.provenance().basis().isVerified(),
                    total(),
                    wanted.map(this::heard),
                    next.isPresent() ? Optional.of(heard(next.getAsDouble())) : Optional.empty(),
                    distance(Listening.PLEASANT, "distance of pleasant listening"),
                    distance(Listening.USABLE, "distance of usable listening"),
                    distances.stream().map(this::heard).toList());
        }

        private Figure.Known total() {
            return new Figure.Known(
                    with(noise.median()),
                    Unit.VOLT_PER_METRE,
                    with(noise.low()),
                    with(noise.high()),
                    surroundings.noise().isPresent() ? "read in the room" : "ITU-R P.372, deciles in time",
                    "noise in " + Math.round(receiver.bandwidth() / 1e3) + " kHz, set's own included, rms",
                    receiver.word());
        }

        private double with(double place) {
            return Math.hypot(place, receiver.ownNoise());
        }

        private Listening listening(double scale) {
            return new Listening(carrier.radiator().scaled(scale), receiver, noise, depth);
        }

        private Heard heard(double distance) {
            Listening.Heard typical = listening(1).at(distance);
            double low = listening(Math.exp(carrier.low())).at(distance).worst();
            double high = listening(Math.exp(carrier.high())).at(distance).best();
            double snr = typical.signalToNoise();
            Figure.Known figure = new Figure.Known(
                    snr,
                    Unit.DECIBEL,
                    Math.min(snr, low),
                    Math.max(snr, high),
                    BASIS,
                    "audio signal-to-noise",
                    receiver.word());
            return new Heard(
                    distance, figure, sound(typical.quality()), typical.quality() == Listening.Quality.TOO_WEAK);
        }

        private static String sound(Listening.Quality quality) {
            return switch (quality) {
                case PLEASANT -> "pleasant";
                case USABLE -> "usable, noise behind speech";
                case NOISY -> "noisy";
                case LOST -> "lost in the noise";
                case TOO_WEAK -> "too weak to play";
            };
        }

        private Figure distance(double signalToNoise, String quantity) {
            OptionalDouble typical = listening(1).distanceFor(signalToNoise);
            if (typical.isEmpty())
                return new Figure.Missing(
                        quantity,
                        String.format(Locale.ROOT, "not even close by does it reach %.0f dB and play", signalToNoise));
            double value = typical.getAsDouble();
            double low = quieter(carrier.low(), noise.high())
                    .distanceFor(signalToNoise)
                    .orElse(0);
            double high = quieter(carrier.high(), noise.low())
                    .distanceFor(signalToNoise)
                    .orElse(value);
            return new Figure.Known(
                    value, Unit.METRE, Math.min(value, low), Math.max(value, high), BASIS, quantity, receiver.word());
        }

        /** With the field at one end of its interval and the noise at one of its deciles. */
        private Listening quieter(double field, double place) {
            Radiator radiator = carrier.radiator().scaled(Math.exp(field));
            return new Listening(radiator, receiver, NoiseField.measured(place), depth);
        }
    }

    /** Whether man-made noise is tabled at a frequency (Hz). */
    static boolean tabled(double frequency) {
        return frequency >= Environment.LOWEST && frequency <= Environment.HIGHEST;
    }
}
