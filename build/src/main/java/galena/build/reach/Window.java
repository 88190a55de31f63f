package galena.build.reach;

import galena.build.figure.Figure;
import galena.build.folder.Intent;
import galena.build.folder.PartEntry;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.trade.field.Radiator;
import galena.trade.limit.BuildFacts;
import galena.trade.limit.Transmission;
import galena.trade.noise.Listening;
import galena.trade.noise.NoiseField;
import galena.trade.noise.ReceiverClass;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Between what carrier currents an aerial is heard where the intent wants it and stays inside the figure held for the region. Field
 * goes with current, so one reckoning at one ampere tells both ends.
 *
 * @param aerial its words
 * @param least current (A, peak) from which speech is followed with ease at the distance wanted; none where no distance is wanted
 * @param most current (A, peak) at which the crest of modulation meets the region's field limit; none where no field limit is held
 */
public record Window(String aerial, OptionalDouble least, OptionalDouble most) {
    private static final double PEAK = Math.sqrt(2);

    /** Why an aerial's field can't be reckoned. */
    public record Unknown(String reason) implements Answer {}

    /** A window, or why there is none. */
    public sealed interface Answer {}

    /** A window. */
    public record Known(Window window) implements Answer {}

    /** The classes of set that can be asked for: "rod set". */
    public static List<String> sets() {
        return ReceiverClass.standard().stream().map(r -> shown(r.word())).toList();
    }

    private static String shown(String word) {
        return word.replace('_', '-');
    }

    /**
     * @param aerial a part for which {@code kind().isAerial()} holds
     * @param intent with carrier
     * @param set one of {@link #sets}
     * @param input power drawn from the supply (W)
     */
    public static Answer of(PartEntry aerial, Intent intent, Surroundings surroundings, String set, double input) {
        if (!(AerialOf.of(aerial) instanceof AerialOf.Known known))
            return new Unknown(((AerialOf.Unknown) AerialOf.of(aerial)).reason());
        double frequency = intent.carrier().orElseThrow().value();
        double depth =
                intent.modulation().map(Quantity::value).filter(d -> d > 0).orElse(1.0);
        OptionalDouble least = OptionalDouble.empty();
        if (intent.distance().isPresent()) {
            double wanted = intent.distance().get().value();
            least = OptionalDouble.of(PEAK * least(known.aerial(), frequency, depth, surroundings, set, wanted));
        }
        return new Known(new Window(
                known.aerial().words(), least, most(known.aerial(), aerial, frequency, depth, intent, input)));
    }

    /** Rms; by the set's need of signal to noise or its least field, whichever is more. */
    private static double least(
            Aerial aerial, double frequency, double depth, Surroundings surroundings, String set, double distance) {
        Listening.Heard heard =
                listening(aerial, frequency, depth, surroundings, set, 1).at(distance);
        double forNoise = Math.pow(10, (Listening.USABLE - heard.signalToNoise()) / 20);
        return Math.max(forNoise, receiver(set).leastField() / heard.field());
    }

    private static Listening listening(
            Aerial aerial, double frequency, double depth, Surroundings surroundings, String set, double rms) {
        ReceiverClass receiver = receiver(set);
        NoiseField noise = surroundings.noise().isPresent()
                ? NoiseField.measured(surroundings.noise().getAsDouble())
                : NoiseField.of(surroundings.environment(), frequency, receiver.bandwidth(), surroundings.indoors());
        return new Listening(aerial.carrying(rms, frequency), receiver, noise, depth);
    }

    private static ReceiverClass receiver(String set) {
        return ReceiverClass.standard().stream()
                .filter(r -> shown(r.word()).equals(set))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no class of set is called " + set));
    }

    /** How far such a set follows speech with a current (A, peak); none if not even at 0.1 m. */
    public static OptionalDouble distance(
            PartEntry aerial, Intent intent, Surroundings surroundings, String set, double peak) {
        if (!(AerialOf.of(aerial) instanceof AerialOf.Known known) || !(peak > 0)) return OptionalDouble.empty();
        double depth =
                intent.modulation().map(Quantity::value).filter(d -> d > 0).orElse(1.0);
        double frequency = intent.carrier().orElseThrow().value();
        return listening(known.aerial(), frequency, depth, surroundings, set, peak / PEAK)
                .distanceFor(Listening.USABLE);
    }

    /** Nearer than this (m) an aerial's field isn't reckoned; 0 where it can't be reckoned at all. */
    public static double nearest(PartEntry aerial) {
        return AerialOf.of(aerial) instanceof AerialOf.Known known
                ? known.aerial().nearest()
                : 0;
    }

    private static OptionalDouble most(
            Aerial aerial, PartEntry part, double frequency, double depth, Intent intent, double input) {
        double rms = 1e-3;
        Radiator radiator = aerial.carrying(rms, frequency);
        Figure.Known current = new Figure.Known(rms, Unit.AMPERE, rms, rms, "taken", "current", part.name());
        Emission emission = new Emission(1, radiator, current, 0, 0);
        boolean wound = aerial instanceof Aerial.Wound;
        Judging.Facts facts = new Judging.Facts(
                wound ? Transmission.Aerial.LOOP : Transmission.Aerial.WIRE,
                new BuildFacts(
                        OptionalDouble.of(input),
                        length(part, "lead"),
                        length(part, "ground_lead"),
                        wound ? OptionalDouble.of(((Aerial.Wound) aerial).wireLength()) : OptionalDouble.empty()),
                true,
                part.path());
        Rules rules = Judging.of(intent.rules(), List.of(emission), depth, facts);
        if (!(rules instanceof Rules.Judged judged)) return OptionalDouble.empty();
        OptionalDouble most = OptionalDouble.empty();
        for (Rules.Route route : judged.routes()) {
            if (route.standing() == Standing.NOT_AVAILABLE) continue;
            OptionalDouble margin = route.lines().stream()
                    .filter(line -> !line.outOfBand() && line.distance().isPresent())
                    .flatMap(line -> line.decisive().stream())
                    .mapToDouble(Figure.Known::value)
                    .min();
            // a route without a field limit that the build's facts keep to leaves the current free
            if (margin.isEmpty() && route.standing() == Standing.WITHIN) return OptionalDouble.empty();
            if (margin.isEmpty()) continue;
            double here = PEAK * rms * Math.pow(10, margin.getAsDouble() / 20);
            if (most.isEmpty() || here > most.getAsDouble()) most = OptionalDouble.of(here);
        }
        return most;
    }

    private static OptionalDouble length(PartEntry part, String key) {
        Optional<Quantity> value = part.values().quantity(key);
        return value.isPresent() ? OptionalDouble.of(value.get().value()) : OptionalDouble.empty();
    }
}
