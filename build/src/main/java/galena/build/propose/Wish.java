package galena.build.propose;

import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.BuildReader;
import galena.build.folder.Drawer;
import galena.build.folder.Layout;
import galena.build.source.BadInputException;
import galena.build.source.Node.Entry;
import galena.build.source.Node.Mapping;
import galena.build.source.Problem;
import galena.build.source.Problems;
import galena.build.source.SourceFile;
import galena.build.source.YamlReader;
import galena.trade.device.DeviceLibrary;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * What a builder asks for: the intent, with or without a supply and parts, and the drawer.
 *
 * @param folder asked in
 * @param build what was read; without parts of its own, one that stands in for reading's sake
 * @param hasParts whether the parts are the builder's
 * @param intentText the builder's own lines, comments and all
 * @param supplyText the same of the supply, if there is one
 * @param drawer what is on hand; empty if nothing is written down
 */
public record Wish(
        Path folder, Build build, boolean hasParts, String intentText, Optional<String> supplyText, Drawer drawer) {
    /** Stands behind a file without parts so that the rest can be read and checked at its own places. */
    private static final String STAND_IN = "\nparts:\n  Standin: {resistor: 1 kΩ, from: rail, to: ground}\n";

    /**
     * @param path a folder with a {@code build.yaml} that has at least an intent, or that file
     * @throws BadInputException with every problem found, or if there is no intent with a carrier
     * @throws IOException if the disk fails
     */
    public static Wish open(Path path) throws BadInputException, IOException {
        Path whole = path.toAbsolutePath().normalize(), parent = whole.getParent();
        Path folder = Files.isRegularFile(whole) && parent != null ? parent : path;
        if (!Files.isDirectory(folder)) BuildFolder.open(path); // tells what is wrong
        SourceFile file = SourceFile.read(Layout.BUILD.in(folder), Layout.BUILD.place());
        return of(folder, file, BuildFolder.drawer(folder));
    }

    static Wish of(Path folder, SourceFile file, Drawer drawer) throws BadInputException {
        Problems problems = new Problems();
        Mapping top = YamlReader.read(file, problems);
        problems.throwIfAny();
        boolean hasParts = top.entry("parts").isPresent();
        SourceFile whole = hasParts
                ? file
                : SourceFile.of(file.path(), file.name(), (file.text() + STAND_IN).getBytes(StandardCharsets.UTF_8));
        Path name = folder.toAbsolutePath().normalize().getFileName();
        Build build = BuildReader.read(whole, name == null ? "build" : name.toString(), DeviceLibrary.standard());
        if (build.intent().carrier().isEmpty())
            throw new BadInputException(new Problem(
                    top.place(),
                    "intent.carrier",
                    "the intent names no carrier",
                    "A proposal is made for a channel.",
                    "Write intent: {carrier: 999 kHz}; galena channel helps to choose one."));
        if (!hasParts && build.intent().programme().isEmpty())
            throw new BadInputException(new Problem(
                    top.place(),
                    "intent.programme",
                    "the intent names no programme",
                    "A modulator is made for a level and a band.",
                    "Write intent: {programme: {level: 500 mV, band: 60 Hz..4.5 kHz}}"));
        return new Wish(
                folder,
                build,
                hasParts,
                stretch(file, top, "intent").orElseThrow(),
                stretch(file, top, "supply"),
                drawer);
    }

    /** A key's lines as they stand, to the end of their last one. */
    private static Optional<String> stretch(SourceFile file, Mapping top, String key) {
        Optional<Entry> entry = top.entry(key);
        if (entry.isEmpty()) return Optional.empty();
        String text = file.text();
        int from = text.offsetByCodePoints(0, entry.get().key().span().start());
        int to = text.offsetByCodePoints(0, entry.get().value().end());
        int line = text.indexOf('\n', to);
        return Optional.of(text.substring(from, line < 0 ? text.length() : line).stripTrailing() + "\n");
    }
}
