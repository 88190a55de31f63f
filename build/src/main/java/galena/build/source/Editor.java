package galena.build.source;

import galena.build.source.Node.Entry;
import galena.build.source.Node.Mapping;
import galena.build.source.Node.Scalar;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Makes one {@link Edit} in a file's bytes. The stretch to replace comes from the parsed tree; the result is parsed again,
 * and the edit is refused unless the two trees differ in that one value and nothing else.
 */
public final class Editor {
    private final SourceFile file;
    private final Mapping top;
    private final Edit edit;

    private Editor(SourceFile file, Mapping top, Edit edit) {
        this.file = file;
        this.top = top;
        this.edit = edit;
    }

    /**
     * The file with the edit made; nothing is written.
     *
     * @throws BadInputException if the file can't be read, the value isn't what the edit expects, or can't be changed alone
     */
    public static SourceFile apply(SourceFile file, Edit edit) throws BadInputException {
        Mapping top = readable(file);
        Editor editor = new Editor(file, top, edit);
        SourceFile changed = editor.changed();
        if (!values(readable(changed)).equals(editor.expected()))
            throw editor.refuse(top.place(), "cannot be changed without touching its neighbours");
        return changed;
    }

    private static Mapping readable(SourceFile file) throws BadInputException {
        Problems problems = new Problems();
        Mapping top = YamlReader.read(file, problems);
        problems.throwIfAny();
        return top;
    }

    private SourceFile changed() throws BadInputException {
        if (edit.before().isEmpty()) return insert(edit.after().orElseThrow());
        Scalar scalar = current(edit.before().get());
        return edit.after().isPresent() ? replace(scalar, edit.after().get()) : remove();
    }

    private Scalar current(String expected) throws BadInputException {
        Node node = top.find(edit.path()).orElseThrow(() -> refuse(top.place(), "is not in the file"));
        if (!(node instanceof Scalar scalar)) throw refuse(node.place(), "is " + node.kind() + ", not a single value");
        if (!scalar.text().equals(expected))
            throw refuse(node.place(), "is \"" + scalar.text() + "\" and no longer \"" + expected + "\"");
        if (scalar.style() == Node.Style.BLOCK)
            throw refuse(node.place(), "is a text over several lines, which is changed in an editor");
        return scalar;
    }

    private SourceFile replace(Scalar scalar, String text) throws BadInputException {
        String written = Written.as(text, scalar.style());
        // "key:" with nothing behind it: the value's place is right behind the colon, and a blank is due.
        boolean blankDue = scalar.isEmpty() && !text.isEmpty();
        return splice(scalar.span().start(), scalar.span().end(), (blankDue ? " " : "") + written);
    }

    private SourceFile insert(String text) throws BadInputException {
        if (top.find(edit.path()).isPresent()) throw refuse(top.place(), "is already in the file");
        int dot = edit.path().lastIndexOf('.');
        String group = edit.path().substring(0, Math.max(dot, 0));
        String key = edit.path().substring(dot + 1);
        Node parent = top.find(group).orElseThrow(() -> refuse(top.place(), "has no group to stand in"));
        if (!(parent instanceof Mapping mapping) || mapping.entries().isEmpty())
            throw refuse(parent.place(), "has no group with keys to stand in");
        String entry = Written.as(key, Node.Style.PLAIN) + ": " + Written.as(text, Node.Style.PLAIN);
        Entry last = mapping.entries().get(mapping.entries().size() - 1);
        if (mapping.braces()) return splice(last.value().end(), last.value().end(), ", " + entry);
        String lineEnd = file.text().contains("\r\n") ? "\r\n" : "\n";
        String indent = " ".repeat(mapping.entries().get(0).key().place().column() - 1);
        int end = last.value().end();
        int behind = slice(0, end).endsWith("\n") ? end : endOfLine(end); // a | text ends behind its own line end
        boolean unfinished = behind == length() && !file.text().endsWith("\n");
        return splice(behind, behind, unfinished ? lineEnd + indent + entry : indent + entry + lineEnd);
    }

    private SourceFile remove() throws BadInputException {
        int dot = edit.path().lastIndexOf('.');
        Node parent = top.find(edit.path().substring(0, Math.max(dot, 0))).orElseThrow();
        String key = edit.path().substring(dot + 1);
        if (!(parent instanceof Mapping mapping) || mapping.entries().size() < 2)
            throw refuse(parent.place(), "is the only one of its group");
        int index = mapping.entries().indexOf(mapping.entry(key).orElseThrow());
        Entry entry = mapping.entries().get(index);
        if (mapping.braces()) return removeInBraces(mapping, index, entry);
        int start = startOfLine(entry.key().span().start());
        int end = endOfLine(entry.value().end());
        requireBlank(start, entry.key().span().start(), entry);
        requireBlank(entry.value().end(), end, entry);
        boolean last = end == length() && !file.text().endsWith("\n");
        return splice(last ? beforeLineEnd(start) : start, end, "");
    }

    /** Takes the comma before the key, or the one behind the first key of its group. */
    private SourceFile removeInBraces(Mapping mapping, int index, Entry entry) throws BadInputException {
        int start = entry.key().span().start();
        int end = entry.value().end();
        if (index > 0) start = mapping.entries().get(index - 1).value().end();
        else end = mapping.entries().get(1).key().span().start();
        if (slice(start, entry.key().span().start()).contains("#")
                || slice(entry.value().end(), end).contains("#"))
            throw refuse(entry.key().place(), "has a comment beside it, which would be lost");
        return splice(start, end, "");
    }

    private void requireBlank(int start, int end, Entry entry) throws BadInputException {
        if (!slice(start, end).isBlank())
            throw refuse(entry.key().place(), "shares its line with something else, which would be lost");
    }

    /** Every scalar of the file by path after the edit, as it must come out of the second reading. */
    private Map<String, String> expected() {
        Map<String, String> values = values(top);
        edit.after().ifPresentOrElse(after -> values.put(edit.path(), after), () -> values.remove(edit.path()));
        return values;
    }

    private static Map<String, String> values(Mapping top) {
        Map<String, String> values = new LinkedHashMap<>();
        top.all().forEach((path, node) -> values.put(path, node instanceof Scalar s ? s.text() : node.kind()));
        return values;
    }

    private SourceFile splice(int start, int end, String replacement) throws BadInputException {
        byte[] bytes = file.bytes();
        int from = file.byteOffset(start);
        int to = file.byteOffset(end);
        ByteArrayOutputStream out = new ByteArrayOutputStream(bytes.length + replacement.length());
        out.write(bytes, 0, from);
        out.writeBytes(replacement.getBytes(StandardCharsets.UTF_8));
        out.write(bytes, to, bytes.length - to);
        return file.withBytes(out.toByteArray());
    }

    private int length() {
        return file.text().codePointCount(0, file.text().length());
    }

    private String slice(int start, int end) {
        String text = file.text();
        return text.substring(text.offsetByCodePoints(0, start), text.offsetByCodePoints(0, end));
    }

    /** Index behind the line end that follows. */
    private int endOfLine(int from) {
        int at = slice(from, length()).indexOf('\n');
        return at < 0
                ? length()
                : from + slice(from, length()).substring(0, at + 1).codePointCount(0, at + 1);
    }

    private int startOfLine(int from) {
        String before = slice(0, from);
        String lines = before.substring(0, before.lastIndexOf('\n') + 1);
        return lines.codePointCount(0, lines.length());
    }

    private int beforeLineEnd(int start) {
        String before = slice(0, start);
        return start - (before.endsWith("\r\n") ? 2 : before.endsWith("\n") ? 1 : 0);
    }

    private BadInputException refuse(Place place, String found) {
        return new BadInputException(
                new Problem(place, edit.path(), found, "Only this one value may change; the file was left as it is."));
    }
}
