package galena.build.reach;

import galena.trade.noise.Environment;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Where a build is used, as far as no file tells.
 *
 * @param environment surroundings as ITU-R P.372 tells them apart
 * @param indoors what the room adds to the noise outside (dB)
 * @param noise measured in the room in a set's bandwidth instead (V/m, rms)
 * @param neighbour distance of a neighbour's set (m)
 * @param finalStage d.c. power into the final radio-frequency stage, where the builder knows it (W)
 */
public record Surroundings(
        Environment environment,
        double indoors,
        OptionalDouble noise,
        OptionalDouble neighbour,
        OptionalDouble finalStage) {
    /** The names of the environments: "quiet-rural". */
    public static List<String> places() {
        return Arrays.stream(Environment.values())
                .filter(e -> e != Environment.GALACTIC)
                .map(Surroundings::name)
                .toList();
    }

    private static String name(Environment environment) {
        return environment.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** @param place one of {@link #places} */
    public static Surroundings in(
            String place, double indoors, OptionalDouble noise, OptionalDouble neighbour, OptionalDouble finalStage) {
        Environment environment = Arrays.stream(Environment.values())
                .filter(e -> name(e).equals(place))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no surroundings are called " + place));
        return new Surroundings(environment, indoors, noise, neighbour, finalStage);
    }

    /** A residential street, nothing known of the room or the neighbour. */
    public static final Surroundings RESIDENTIAL = new Surroundings(
            Environment.RESIDENTIAL, 0, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

    public Surroundings {
        if (environment == Environment.GALACTIC)
            throw new IllegalArgumentException("galactic noise doesn't reach the ground at medium waves");
        if (!Double.isFinite(indoors)) throw new IllegalArgumentException("an excess is finite, not " + indoors);
        positive(noise, "noise");
        positive(neighbour, "distance");
        positive(finalStage, "power");
    }

    private static void positive(OptionalDouble value, String what) {
        if (value.isPresent() && !(value.getAsDouble() > 0 && value.getAsDouble() < Double.POSITIVE_INFINITY))
            throw new IllegalArgumentException("a " + what + " is above zero, not " + value.getAsDouble());
    }

    /** The noise in words: "residential by ITU-R P.372, 10 dB more indoors". */
    public String words() {
        if (noise.isPresent()) return "as read in the room";
        return name(environment) + " by ITU-R P.372"
                + (indoors == 0 ? "" : String.format(Locale.ROOT, ", %+.0f dB indoors", indoors));
    }
}
