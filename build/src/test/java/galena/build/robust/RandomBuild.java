package galena.build.robust;

import galena.build.folder.Build;
import galena.build.folder.Builds;
import galena.build.folder.Overlay;
import galena.build.pattern.Corners;
import galena.build.pattern.Pattern;
import galena.build.source.BadInputException;
import galena.engine.circuit.Circuit;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.regex.MatchResult;

/**
 * A pattern with half of its values moved by one or two E12 steps, other devices of the same family, adjustments anywhere, a
 * temperature from −10 to +50 °C and a battery at any charge.
 *
 * @param seed that draws it again
 * @param pattern it started from
 * @param text of its build file
 * @param celsius temperature
 * @param charge of the battery, 0 to 1
 * @param devices specimens
 */
record RandomBuild(long seed, String pattern, String text, double celsius, double charge, Corners.Devices devices) {
    static final List<String> JFETS = List.of(
            "BF245A", "BF245B", "BF245C", "BF256A", "BF256B", "BF256C", "2N5484", "2N5485", "2N5486", "J309", "J310");
    static final List<String> NPNS = List.of("BC547B", "2N3904", "BF199");

    private static final java.util.regex.Pattern VALUE =
            java.util.regex.Pattern.compile("(resistor|capacitor|coil|loopstick): ([0-9.]+) (\\S+?)(?=[,}])");
    private static final java.util.regex.Pattern DEVICE = java.util.regex.Pattern.compile("(jfet|npn): (\\w+)");
    private static final java.util.regex.Pattern SET = java.util.regex.Pattern.compile("set: (\\d+) %");
    private static final List<Corners.Devices> DEVICES = List.of(Corners.Devices.values());
    private static final double[] E12 = {1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2};

    static RandomBuild draw(long seed) {
        Random random = new Random(seed);
        Pattern pattern = Pattern.all().get(random.nextInt(Pattern.all().size()));
        String text = pattern.text();
        text = VALUE.matcher(text).replaceAll(match -> moved(match, random));
        text = DEVICE.matcher(text).replaceAll(match -> other(match, random));
        text = SET.matcher(text).replaceAll(match -> "set: " + random.nextInt(101) + " %");
        Corners.Devices devices = DEVICES.get(random.nextInt(DEVICES.size()));
        return new RandomBuild(
                seed, pattern.name(), text, -10 + 60 * random.nextDouble(), random.nextDouble(), devices);
    }

    private static String moved(MatchResult match, Random random) {
        if (random.nextBoolean()) return match.group();
        int steps = random.nextInt(5) - 2;
        double value = Double.parseDouble(match.group(2));
        return match.group(1) + ": " + String.format(Locale.ROOT, "%.4g", stepped(value, steps)) + " " + match.group(3);
    }

    /** The E12 value some steps from the nearest one. */
    static double stepped(double value, int steps) {
        int decade = (int) Math.floor(Math.log10(value));
        double mantissa = value / Math.pow(10, decade);
        int nearest = 0;
        for (int k = 1; k < E12.length; k++)
            if (Math.abs(E12[k] - mantissa) < Math.abs(E12[nearest] - mantissa)) nearest = k;
        int at = nearest + steps;
        return E12[Math.floorMod(at, E12.length)] * Math.pow(10, decade + Math.floorDiv(at, E12.length));
    }

    private static String other(MatchResult match, Random random) {
        List<String> family = match.group(1).equals("jfet") ? JFETS : NPNS;
        return match.group(1) + ": " + family.get(random.nextInt(family.size()));
    }

    Build build() throws BadInputException {
        return Builds.read(text);
    }

    Circuit circuit() throws BadInputException {
        Build build = build();
        Overlay overlay = Corners.overlay(build, celsius, charge);
        return Corners.circuit(build, overlay, devices);
    }

    KeptBuild kept() {
        return new KeptBuild(text, celsius, charge, devices);
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT, "seed %d, %s, %.1f °C, charge %.2f, %s devices", seed, pattern, celsius, charge, devices);
    }
}
