package galena.build.attempt;

import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.build.spread.Drawn;
import galena.build.spread.Drawn.Quantity;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * What one step of one value does, by solving the build with it and nothing else changed but the trimmer, which follows.
 *
 * @param to the neighbouring value
 * @param effects in words, the weightiest first; "hardly anything changes" where none counts
 * @param yield share of copies that would still meet every line, the proposal's own copies carried over; 0 where nothing runs
 */
public record Neighbour(String to, String effects, double yield) {
    private static final int MOST_WORDS = 3;
    private static final double TRIM_COUNTS = 0.01;

    private record Effect(double weight, String words) {}

    public static Neighbour silent(String to) {
        return new Neighbour(to, "it does not oscillate", 0);
    }

    public static Neighbour of(String to, Tried here, Tried there) {
        return new Neighbour(
                to, effects(here.typical(), there.typical()), there.standing().yield());
    }

    /** From one read build to another, in words. */
    public static String effects(Drawn here, Drawn there) {
        List<Effect> effects = new ArrayList<>();
        if (there.values().containsKey(Quantity.MISSED))
            effects.add(new Effect(
                    50,
                    "the trimmer misses the channel by "
                            + Engineering.print(Math.abs(value(there, Quantity.MISSED)), Unit.HERTZ, 2)));
        for (String failure : there.failures())
            if (!here.failures().contains(failure) && !failure.contains("reach the channel"))
                effects.add(new Effect(40, failure));
        share(effects, here, there, Quantity.MARGIN, 0.1, "startup margin");
        share(effects, here, there, Quantity.DISTORTION, 0.15, "distortion");
        relative(effects, here, there, Quantity.OUTPUT, 0.03, "output");
        relative(effects, here, there, Quantity.SUPPLY, 0.02, "supply current");
        audio(effects, here, there);
        harmonic(effects, here, there);
        carrier(effects, here, there);
        if (effects.isEmpty()) return "hardly anything changes";
        return effects.stream()
                .sorted(Comparator.comparingDouble((Effect e) -> -e.weight))
                .limit(MOST_WORDS)
                .map(Effect::words)
                .reduce((a, b) -> a + ", " + b)
                .orElseThrow();
    }

    private static double value(Drawn drawn, Quantity quantity) {
        return drawn.values().getOrDefault(quantity, 0.0);
    }

    private static boolean both(Drawn here, Drawn there, Quantity quantity) {
        return here.values().containsKey(quantity) && there.values().containsKey(quantity);
    }

    private static void share(
            List<Effect> to, Drawn here, Drawn there, Quantity quantity, double counts, String words) {
        if (!both(here, there, quantity)) return;
        double a = value(here, quantity), b = value(there, quantity);
        double weight = Math.abs(b - a) / Math.max(1e-9, Math.abs(a)) / counts;
        if (weight < 1) return;
        to.add(new Effect(weight, words + " " + percent(a) + " → " + percent(b)));
    }

    private static String percent(double share) {
        return Engineering.print(share, Unit.FRACTION, 2).replace('-', '−');
    }

    private static void relative(
            List<Effect> to, Drawn here, Drawn there, Quantity quantity, double counts, String words) {
        if (!both(here, there, quantity)) return;
        double change = value(there, quantity) / value(here, quantity) - 1;
        if (Math.abs(change) < counts) return;
        to.add(new Effect(Math.abs(change) / counts, words + " " + signed(100 * change) + " %"));
    }

    private static void audio(List<Effect> to, Drawn here, Drawn there) {
        if (!both(here, there, Quantity.AUDIO)) return;
        double ratio = value(there, Quantity.AUDIO) / value(here, Quantity.AUDIO);
        double change = Math.abs(Math.log(ratio));
        if (change < 0.03) return;
        to.add(new Effect(
                change / 0.03,
                "the depth takes " + Math.round(100 * Math.abs(ratio - 1)) + " % " + (ratio > 1 ? "more" : "less")
                        + " audio"));
    }

    private static void harmonic(List<Effect> to, Drawn here, Drawn there) {
        if (!both(here, there, Quantity.HARMONIC)) return;
        double change = value(there, Quantity.HARMONIC) - value(here, Quantity.HARMONIC);
        if (Math.abs(change) < 1) return;
        to.add(new Effect(Math.abs(change) / 2, "harmonics " + signed(change) + " dB"));
    }

    private static void carrier(List<Effect> to, Drawn here, Drawn there) {
        if (!both(here, there, Quantity.TRIM) || !both(here, there, Quantity.AS_SET)) return;
        double change = value(there, Quantity.TRIM) - value(here, Quantity.TRIM);
        if (Math.abs(change) < TRIM_COUNTS) return;
        double hertz = value(there, Quantity.AS_SET) - value(here, Quantity.AS_SET);
        to.add(new Effect(
                Math.abs(change) / 0.05,
                "carrier " + (hertz < 0 ? "−" : "+") + Engineering.print(Math.abs(hertz), Unit.HERTZ, 2)
                        + String.format(
                                Locale.ROOT, " until the trimmer goes to %.0f %%", 100 * value(there, Quantity.TRIM))));
    }

    private static String signed(double number) {
        String plain = String.format(Locale.ROOT, Math.abs(number) < 9.95 ? "%.1f" : "%.0f", Math.abs(number));
        return (number < 0 ? "−" : "+") + plain;
    }
}
