package galena.build.pattern;

import galena.build.folder.Layout;
import galena.build.source.BadInputException;
import galena.build.source.Nearest;
import galena.build.source.Place;
import galena.build.source.Problem;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;

/**
 * A known-good arrangement that a build starts from.
 *
 * @param name by which it is asked for
 * @param summary what it is and whom it suits, one line
 */
public record Pattern(String name, String summary) {
    private static final List<Pattern> ALL = List.of(
            new Pattern(
                    "grounded-gate-colpitts",
                    "JFET oscillator without a tap, long-tailed-pair modulator; the one to begin with"),
            new Pattern(
                    "grounded-drain-colpitts", "JFET oscillator that takes its output at the source, same modulator"),
            new Pattern("gate-leak-hartley", "JFET oscillator on a tapped coil, wide tuning, same modulator"),
            new Pattern("clapp", "JFET oscillator that hides its device from the tuning, same modulator"),
            new Pattern("bipolar-colpitts", "the same with a bipolar transistor from any drawer"),
            new Pattern("emitter-modulated", "two transistors in all: audio in the emitter of the oscillator"),
            new Pattern("supply-modulated", "three transistors: audio on the supply of the oscillator, from 12 V"),
            new Pattern("series-modulated", "an op-amp holds the final's supply to the audio: the cleanest, from 12 V"),
            new Pattern("dual-gate", "carrier on one gate of a dual-gate MOSFET, audio on the other"),
            new Pattern("gain-controlled", "a gain-controlled amplifier from four transistors modulates by its gain"),
            new Pattern("short-wire", "an upright wire through a loading coil instead of a rod"),
            new Pattern("ceramic-resonator", "on 999 kHz within a few kilohertz without a coil to wind for it"),
            new Pattern("quartz", "on 1000 kHz within tens of hertz"));

    /** What belongs to some other build and must not end up beside a new one. */
    private static final List<Layout> NOT_BESIDE = List.of(Layout.BUILD, Layout.LOG, Layout.CALIBRATION);

    /** All of them, the one to begin with first. */
    public static List<Pattern> all() {
        return ALL;
    }

    /** @throws BadInputException when no pattern has that name, with the nearest that one has */
    public static Pattern named(String name) throws BadInputException {
        Optional<Pattern> found = ALL.stream().filter(p -> p.name.equals(name)).findFirst();
        if (found.isPresent()) return found.get();
        List<String> names = ALL.stream().map(Pattern::name).toList();
        throw new BadInputException(new Problem(
                new Place("--pattern", 1, 1),
                "",
                "no pattern is named \"" + name + "\"",
                "The patterns are " + String.join(", ", names) + ".",
                Nearest.to(name, names).map(n -> "Nearest: " + n)));
    }

    /**
     * Writes a pattern as the {@code build.yaml} of a folder, which is made if it isn't there. Nothing is overwritten.
     *
     * @param name of the pattern
     * @param folder of the new build
     * @return the file written
     * @throws BadInputException when no pattern has that name, or a build is in that folder already
     * @throws IOException when the disk refuses
     */
    public static Path write(String name, Path folder) throws BadInputException, IOException {
        Pattern pattern = named(name);
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw refused(folder, "is a file", "A build is a folder; name one that is free or not there yet.");
        }
        for (Layout layout : NOT_BESIDE) {
            if (Files.exists(layout.in(folder))) throw taken(folder, layout);
        }
        Files.createDirectories(folder);
        Path file = Layout.BUILD.in(folder);
        try {
            Files.writeString(file, pattern.text(), StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW);
        } catch (FileAlreadyExistsException meanwhile) {
            throw taken(folder, Layout.BUILD);
        }
        return file;
    }

    private static BadInputException taken(Path folder, Layout layout) {
        return refused(
                folder,
                "has a " + layout.place() + " already",
                "A new build never takes the place of another; name a folder that is free or not there yet.");
    }

    private static BadInputException refused(Path folder, String found, String rule) {
        return new BadInputException(new Problem(new Place(folder.toString(), 1, 1), "", found, rule));
    }

    /** The text of its {@code build.yaml}. */
    public String text() {
        String file = "/galena/pattern/" + name + ".yaml";
        try (InputStream in = Pattern.class.getResourceAsStream(file)) {
            if (in == null) throw new IllegalStateException("the pattern " + name + " lacks its file");
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException damaged) {
            throw new UncheckedIOException(file + " can't be read", damaged);
        }
    }
}
