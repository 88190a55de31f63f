package galena.packet.schematic;

import galena.build.folder.Build;
import galena.build.folder.BuildReader;
import galena.build.pattern.Pattern;
import galena.build.source.BadInputException;
import galena.build.source.SourceFile;
import galena.trade.device.DeviceLibrary;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.regex.Matcher;

/** Builds to draw: the demo, hand-written ones, and mutilated or doubled ones made from them. */
final class SomeBuilds {
    static final List<String> NAMES = List.of("demo", "tickler", "crystal", "positive-ground", "stage");
    static final List<String> PATTERNS =
            Pattern.all().stream().map(Pattern::name).toList();
    private static final java.util.regex.Pattern PART = java.util.regex.Pattern.compile("^  (\\w+): +\\{(.*)}.*$");
    private static final java.util.regex.Pattern NET = java.util.regex.Pattern.compile(
            "\\b(from|to|wiper|anode|cathode|collector|base|emitter|drain|gate1|gate2|gate|source|plus|minus): (\\w+)");

    private SomeBuilds() {}

    static Build named(String name) {
        return read(text(name), name);
    }

    private static String text(String name) {
        String place = PATTERNS.contains(name)
                ? "/galena/pattern/" + name + ".yaml"
                : name.equals("demo") ? "/galena/demo/build.yaml" : "/builds/" + name + ".yaml";
        try (InputStream in = SomeBuilds.class.getResourceAsStream(place)) {
            if (in == null) throw new IllegalArgumentException("no build at " + place);
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    private static Build read(String text, String name) {
        try {
            return BuildReader.read(
                    SourceFile.of(Path.of("build.yaml"), "build.yaml", text.getBytes(StandardCharsets.UTF_8)),
                    name,
                    DeviceLibrary.standard());
        } catch (BadInputException bad) {
            throw new AssertionError(text + "\n" + bad.problems(), bad);
        }
    }

    /** Some parts of one build left out, some doubled onto the same nets or onto nets of their own. */
    static Build random(long seed) {
        Random random = new Random(seed);
        String name = NAMES.get(random.nextInt(NAMES.size()));
        String text = text(name);
        List<String> kept = new ArrayList<>();
        double keeps = 0.4 + 0.6 * random.nextDouble();
        for (String line : text.lines().toList()) {
            Matcher part = PART.matcher(line);
            if (!part.matches() || !NET.matcher(line).find()) continue;
            if (random.nextDouble() > keeps) continue;
            kept.add("  " + part.group(1) + ": {" + part.group(2) + "}");
            if (random.nextInt(8) > 0) continue;
            String body = part.group(2);
            kept.add("  " + part.group(1) + "b: {" + (random.nextBoolean() ? body : renamed(body)) + "}");
        }
        String supply =
                text.lines().filter(l -> l.startsWith("supply:")).findFirst().orElse("");
        String programme = "intent:\n  programme: {level: 300 mV, band: 60 Hz..4.5 kHz}\n";
        StringBuilder build =
                new StringBuilder("galena: 1\nname: Made by chance\n" + programme + supply + "\nparts:\n");
        if (kept.isEmpty()) kept.add("  R1: {resistor: 1 kΩ, from: rail, to: ground}");
        kept.forEach(line -> build.append(line).append('\n'));
        Set<String> nets = nets(kept);
        nets.removeAll(Set.of("ground", "rail"));
        if (!nets.isEmpty())
            build.append("points:\n  TP1: {at: ").append(nets.iterator().next()).append("}\n");
        return read(build.toString(), name + " " + seed);
    }

    private static String renamed(String body) {
        return NET.matcher(body)
                .replaceAll(net -> net.group(1) + ": "
                        + (Set.of("ground", "rail").contains(net.group(2)) ? net.group(2) : net.group(2) + "b"));
    }

    private static Set<String> nets(List<String> lines) {
        Set<String> nets = new LinkedHashSet<>();
        for (String line : lines) {
            Matcher net = NET.matcher(line);
            while (net.find()) nets.add(net.group(2));
        }
        return nets;
    }
}
