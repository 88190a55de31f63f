package galena.desk.page;

import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.pattern.Pattern;
import galena.packet.schematic.AnnotatedSvg;
import galena.packet.schematic.Schematic;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Draws the patterns and the demo that have no drawing among the page's resources, and takes away drawings of none: to be run once after a
 * pattern has changed. Its argument is the folder {@code desk/src/main/resources/galena/drawn}.
 */
final class DrawPatterns {
    private DrawPatterns() {}

    public static void main(String[] arguments) throws Exception {
        Path drawn = Path.of(arguments[0]);
        Set<String> wanted = new TreeSet<>();
        for (Build build : builds()) {
            String file = Drawn.file(Drawn.key(build));
            wanted.add(file);
            if (Files.exists(drawn.resolve(file))) continue;
            String svg = AnnotatedSvg.draw(Schematic.of(build, () -> false));
            Files.writeString(drawn.resolve(file), svg, StandardCharsets.UTF_8);
        }
        try (Stream<Path> there = Files.list(drawn)) {
            for (Path file : there.toList())
                if (!wanted.contains(file.getFileName().toString())) Files.delete(file);
        }
    }

    private static List<Build> builds() throws Exception {
        List<Build> builds = new ArrayList<>();
        Path folder = Files.createTempDirectory("patterns");
        for (Pattern pattern : Pattern.all()) {
            Pattern.write(pattern.name(), folder.resolve(pattern.name()));
            builds.add(BuildFolder.open(folder.resolve(pattern.name())).build());
        }
        Path demo = Files.createDirectory(folder.resolve("the-demo"));
        OpenedDemo.lay(demo.resolve("build.yaml"));
        builds.add(BuildFolder.open(demo).build());
        return builds;
    }
}
