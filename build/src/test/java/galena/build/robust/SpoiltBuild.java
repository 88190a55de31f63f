package galena.build.robust;

import galena.build.folder.Build;
import galena.build.folder.Builds;
import galena.build.folder.Overlay;
import galena.build.pattern.Corners;
import galena.build.pattern.Pattern;
import galena.build.source.BadInputException;
import galena.engine.circuit.Circuit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.regex.MatchResult;

/**
 * A good build with one slip of the kind that happens at the bench or in the file.
 *
 * @param seed that draws it again
 * @param pattern it was
 * @param slip what was done to it
 * @param text of its build file
 */
record SpoiltBuild(long seed, String pattern, String slip, String text) {
    private static final String PINS =
            "from|to|wiper|anode|cathode|drain|gate|source|collector|base|emitter|plus|minus";
    private static final java.util.regex.Pattern PIN =
            java.util.regex.Pattern.compile("\\b(" + PINS + "|at): ([A-Za-z]\\w*)(?=[,}])");
    private static final java.util.regex.Pattern DEVICE = java.util.regex.Pattern.compile(
            "\\{(jfet|npn|diode): (\\w+), (\\w+): (\\w+), (?:(\\w+): (\\w+), )?(\\w+): (\\w+)\\}");
    private static final java.util.regex.Pattern VALUE =
            java.util.regex.Pattern.compile("(resistor|capacitor|coil|loopstick|preset): ([0-9.]+) (\\S+?)(?=[,}])");

    static SpoiltBuild draw(long seed) {
        Random random = new Random(seed);
        Pattern pattern = Pattern.all().get(random.nextInt(Pattern.all().size()));
        int kind = random.nextInt(4);
        String text = pattern.text();
        return switch (kind) {
            case 0 -> cut(seed, pattern.name(), text, random);
            case 1 -> shorted(seed, pattern.name(), text, random);
            case 2 -> reversed(seed, pattern.name(), text, random);
            default -> wrongDecade(seed, pattern.name(), text, random);
        };
    }

    private static MatchResult any(java.util.regex.Pattern what, String text, Random random) {
        List<MatchResult> all = new ArrayList<>(what.matcher(text).results().toList());
        return all.get(random.nextInt(all.size()));
    }

    private static String replaced(String text, MatchResult match, String by) {
        return text.substring(0, match.start()) + by + text.substring(match.end());
    }

    private static SpoiltBuild cut(long seed, String pattern, String text, Random random) {
        MatchResult pin = any(PIN, text.substring(0, text.indexOf("\nstrays:")), random);
        return new SpoiltBuild(
                seed, pattern, "cut: " + line(text, pin), replaced(text, pin, pin.group(1) + ": nowhere"));
    }

    private static String line(String text, MatchResult match) {
        return text.substring(text.lastIndexOf('\n', match.start()) + 1, match.end())
                .strip();
    }

    private static SpoiltBuild shorted(long seed, String pattern, String text, Random random) {
        String one = any(PIN, text, random).group(2), other = one;
        while (other.equals(one)) other = any(PIN, text, random).group(2);
        String net = one, by = other;
        String joined = PIN.matcher(text)
                .replaceAll(pin -> pin.group(1) + ": " + (pin.group(2).equals(net) ? by : pin.group(2)));
        return new SpoiltBuild(seed, pattern, "short: " + one + " to " + other, joined);
    }

    private static SpoiltBuild reversed(long seed, String pattern, String text, Random random) {
        MatchResult d = any(DEVICE, text, random);
        // first and last pin change places: collector and emitter, drain and source, anode and cathode; or the last two
        boolean lastTwo = d.group(5) != null && random.nextBoolean();
        String middle = d.group(5) == null ? "" : d.group(5) + ": " + (lastTwo ? d.group(8) : d.group(6)) + ", ";
        String first = lastTwo ? d.group(4) : d.group(8);
        String last = lastTwo ? d.group(6) : d.group(4);
        String turned = "{" + d.group(1) + ": " + d.group(2) + ", " + d.group(3) + ": " + first + ", " + middle
                + d.group(7) + ": " + last + "}";
        return new SpoiltBuild(seed, pattern, "reversed: " + d.group() + " as " + turned, replaced(text, d, turned));
    }

    private static SpoiltBuild wrongDecade(long seed, String pattern, String text, Random random) {
        MatchResult v = any(VALUE, text, random);
        double[] slips = {0.001, 0.1, 10, 1000};
        double value = Double.parseDouble(v.group(2)) * slips[random.nextInt(slips.length)];
        String wrong = String.format(Locale.ROOT, "%s: %.4g %s", v.group(1), value, v.group(3));
        return new SpoiltBuild(seed, pattern, "decade: " + line(text, v) + " as " + wrong, replaced(text, v, wrong));
    }

    /** @throws BadInputException when the slip is found out without solving anything */
    Circuit circuit() throws BadInputException {
        Build build = Builds.read(text);
        return Corners.circuit(build, Overlay.NONE, Corners.Devices.TYPICAL);
    }

    /** What becomes of it; a fault found by reading or by structure is an answer. */
    Trial trial() {
        Circuit circuit;
        try {
            circuit = circuit();
        } catch (BadInputException fault) {
            return new Trial(Trial.End.FAULT, false, fault.problems().get(0).toString(), 0);
        }
        return Trial.of(circuit);
    }

    KeptBuild kept() {
        return new KeptBuild(text, 25, 1, Corners.Devices.TYPICAL);
    }

    @Override
    public String toString() {
        return "seed " + seed + ", " + pattern + ", " + slip;
    }
}
