package galena.desk.page;

import galena.build.folder.BuildFolder;
import galena.build.source.BadInputException;
import galena.signal.audio.InventedProgramme;
import galena.signal.audio.Programme;
import galena.signal.audio.WavSource;
import galena.signal.stream.WavHeader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** The recordings that can be sent: WAVs that lie in the build's folder, and those dropped onto the page, which are kept beside them. */
final class Programmes {
    private static final double INVENTED_RATE = 48_000;
    private static final double LOWEST_RATE = 8_000;
    private static final double HIGHEST_RATE = 400e3;

    /** A programme, and what has to be closed behind it. */
    record Opened(Programme programme, Optional<WavSource> file) implements AutoCloseable {
        @Override
        public void close() throws IOException {
            if (file.isPresent()) file.get().close();
        }
    }

    private Programmes() {}

    /** Plain names, in order. */
    static List<String> in(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(Files::isRegularFile)
                    .map(p -> p.getFileName().toString())
                    .filter(n -> n.toLowerCase(Locale.ROOT).endsWith(".wav") && BenchDrop.isPlain(n))
                    .sorted()
                    .toList();
        }
    }

    /** @param name of a recording; empty for the invented programme */
    static Opened open(BuildFolder build, String name) throws BadInputException, IOException {
        if (name.isEmpty()) return new Opened(new InventedProgramme(INVENTED_RATE), Optional.empty());
        Path file = build.folder().resolve(BenchDrop.name(name));
        if (!Files.isRegularFile(file))
            throw Typed.bad(
                    name, "there is no such recording in the folder", "Pick one, or drop one.", Optional.empty());
        WavSource source;
        try {
            source = WavSource.open(file);
        } catch (WavHeader.BadHeader bad) {
            throw Typed.bad(name, String.valueOf(bad.getMessage()), "A plain WAV is read.", Optional.empty());
        }
        if (source.rate() >= LOWEST_RATE && source.rate() <= HIGHEST_RATE)
            return new Opened(source, Optional.of(source));
        source.close();
        throw Typed.bad(
                name, "its rate is " + source.rate() + " Hz", "Rates of 8 to 400 kHz are read.", Optional.empty());
    }
}
