package galena.build.attempt;

import galena.build.folder.Build;
import galena.build.folder.BuildReader;
import galena.build.source.BadInputException;
import galena.build.source.Node;
import galena.build.source.Node.Mapping;
import galena.build.source.SourceFile;
import galena.trade.device.DeviceLibrary;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** Builds as texts: values are exchanged in the text and the text is read again, so that what is tried is what would be written. */
public final class Draft {
    private static final String NAME = "build.yaml";

    private Draft() {}

    /** @throws BadInputException with every problem of the text */
    public static Build read(String text) throws BadInputException {
        SourceFile file = SourceFile.of(Path.of(NAME), NAME, text.getBytes(StandardCharsets.UTF_8));
        return BuildReader.read(file, "proposal", DeviceLibrary.standard());
    }

    /** A stretch of a text and what shall stand there. */
    private record Splice(int from, int to, String text) {}

    /**
     * @param changes path of a value, {@code parts.Rs.resistor}, to the text that shall stand there; a key that isn't there is
     *     added to its group in braces
     */
    public static Build with(Build build, Map<String, String> changes) throws BadInputException {
        String text = build.file().text();
        List<Splice> splices = new ArrayList<>();
        changes.forEach((path, value) -> splices.add(splice(build, text, path, value)));
        splices.sort(Comparator.comparingInt(Splice::from).reversed());
        StringBuilder changed = new StringBuilder(text);
        for (Splice s : splices) changed.replace(s.from, s.to, s.text);
        return read(changed.toString());
    }

    private static Splice splice(Build build, String text, String path, String value) {
        java.util.Optional<Node> node = build.top().find(path);
        if (node.isPresent()) {
            int from = text.offsetByCodePoints(0, node.get().span().start());
            return new Splice(from, text.offsetByCodePoints(0, node.get().end()), value);
        }
        int dot = path.lastIndexOf('.');
        Node group = build.top().find(path.substring(0, dot)).orElseThrow();
        if (!(group instanceof Mapping mapping)
                || !mapping.braces()
                || mapping.entries().isEmpty())
            throw new IllegalArgumentException(path + " has no group in braces to stand in");
        int behind = text.offsetByCodePoints(
                0, mapping.entries().get(mapping.entries().size() - 1).value().end());
        return new Splice(behind, behind, ", " + path.substring(dot + 1) + ": " + value);
    }
}
