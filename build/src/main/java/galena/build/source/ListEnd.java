package galena.build.source;

import galena.build.source.Node.Listing;
import galena.build.source.Node.Mapping;
import galena.build.source.Node.Scalar;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Adds groups of keys at the end of a list, each in braces on a line of its own. The result is parsed again, and refused unless
 * everything that stood in the file before still stands there under its path.
 */
public final class ListEnd {
    private final SourceFile file;
    private final Listing list;

    private ListEnd(SourceFile file, Listing list) {
        this.file = file;
        this.list = list;
    }

    /**
     * The file with the items added; nothing is written.
     *
     * @param path of the list, {@code readings}
     * @param items keys with texts, or with maps of keys and texts
     * @throws BadInputException if there is no such list, or it can't be added to without touching its neighbours
     */
    public static SourceFile add(SourceFile file, String path, List<Map<String, Object>> items)
            throws BadInputException {
        Mapping top = readable(file);
        Node node = top.find(path).orElse(top);
        if (!(node instanceof Listing list))
            throw new BadInputException(
                    new Problem(node.place(), path, "is no list", "New items stand at the end of a list."));
        ListEnd end = new ListEnd(file, list);
        SourceFile changed = end.with(items.stream().map(ListEnd::braces).toList());
        Map<String, String> before = values(top), after = values(readable(changed));
        after.keySet().retainAll(before.keySet());
        if (!after.equals(before))
            throw new BadInputException(new Problem(
                    list.place(),
                    path,
                    "cannot be added to without touching its neighbours",
                    "What stands in the file stays as it is.",
                    "Write each item on a line of its own after a -."));
        return changed;
    }

    private static Mapping readable(SourceFile file) throws BadInputException {
        Problems problems = new Problems();
        Mapping top = YamlReader.read(file, problems);
        problems.throwIfAny();
        return top;
    }

    private static Map<String, String> values(Mapping top) {
        Map<String, String> values = new LinkedHashMap<>();
        top.all().forEach((path, node) -> {
            if (node instanceof Scalar scalar) values.put(path, scalar.text());
        });
        return values;
    }

    private SourceFile with(List<String> items) throws BadInputException {
        String lineEnd = file.text().contains("\r\n") ? "\r\n" : "\n";
        int end = list.end();
        if (list.items().isEmpty()) {
            String block = items.stream().map(i -> lineEnd + "  - " + i).collect(Collectors.joining());
            // an empty list is written []; the blank before it goes too
            int from = list.span().start();
            while (from > 0 && slice(from - 1, from).equals(" ")) from--;
            return splice(from, end, block);
        }
        Node last = list.items().get(list.items().size() - 1);
        if (list.brackets()) return splice(last.end(), last.end(), ", " + String.join(", ", items));
        int behind = slice(0, end).endsWith("\n") ? end : endOfLine(end);
        boolean unfinished = !slice(0, behind).endsWith("\n");
        String dash = indent() + "- ";
        String block = items.stream().map(i -> dash + i + lineEnd).collect(Collectors.joining());
        return splice(behind, behind, (unfinished ? lineEnd : "") + block);
    }

    /** What stands before the dash of the list's first item. */
    private String indent() {
        String before = slice(0, list.items().get(0).span().start());
        String line = before.substring(before.lastIndexOf('\n') + 1);
        return line.substring(0, Math.max(0, line.indexOf('-')));
    }

    private static String braces(Map<?, ?> keys) {
        return keys.entrySet().stream()
                .map(e -> Written.as(e.getKey().toString(), Node.Style.PLAIN) + ": " + value(e.getValue()))
                .collect(Collectors.joining(", ", "{", "}"));
    }

    private static String value(Object value) {
        return value instanceof Map<?, ?> keys ? braces(keys) : Written.as(value.toString(), Node.Style.PLAIN);
    }

    private SourceFile splice(int from, int to, String replacement) throws BadInputException {
        byte[] bytes = file.bytes();
        int start = file.byteOffset(from), end = file.byteOffset(to);
        ByteArrayOutputStream out = new ByteArrayOutputStream(bytes.length + replacement.length());
        out.write(bytes, 0, start);
        out.writeBytes(replacement.getBytes(StandardCharsets.UTF_8));
        out.write(bytes, end, bytes.length - end);
        return file.withBytes(out.toByteArray());
    }

    private String slice(int start, int end) {
        String text = file.text();
        return text.substring(text.offsetByCodePoints(0, start), text.offsetByCodePoints(0, end));
    }

    private int endOfLine(int from) {
        int length = file.text().codePointCount(0, file.text().length());
        String rest = slice(from, length);
        int at = rest.indexOf('\n');
        return at < 0 ? length : from + rest.codePointCount(0, at + 1);
    }
}
