package galena.build.robust;

import galena.build.folder.Build;
import galena.build.folder.Builds;
import galena.build.pattern.Corners;
import galena.build.source.BadInputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * A build with the conditions at which it failed, as a file under {@code failures/}: a build file whose first lines, comments, carry
 * the conditions and what happened.
 *
 * @param text of the build file
 * @param celsius temperature
 * @param charge of the battery, 0 to 1
 * @param devices specimens
 */
record KeptBuild(String text, double celsius, double charge, Corners.Devices devices) {
    /** The first line of the file. */
    String heading() {
        return String.format(Locale.ROOT, "# at %.6f °C, charge %.6f, %s devices%n", celsius, charge, devices);
    }

    static KeptBuild read(Path file) throws IOException {
        String text = Files.readString(file);
        String[] words = text.lines().findFirst().orElseThrow().split("[ ,]+");
        return new KeptBuild(
                text, Double.parseDouble(words[2]), Double.parseDouble(words[5]), Corners.Devices.valueOf(words[6]));
    }

    Trial trial() throws BadInputException {
        Build build = Builds.read(text);
        return Trial.of(Corners.circuit(build, Corners.overlay(build, celsius, charge), devices));
    }
}
