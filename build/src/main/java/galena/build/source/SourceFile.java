package galena.build.source;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** One text file as it stood when it was read: its bytes, and the text they spell in UTF-8. Immutable. */
public final class SourceFile {
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    /** Far above any build; keeps a wrong file from filling the memory. */
    private static final long LONGEST = 4_000_000;

    private final Path path;
    private final String name;
    private final byte[] bytes;
    private final String text;
    private final boolean marked;

    private SourceFile(Path path, String name, byte[] bytes, String decoded) {
        this.path = path;
        this.name = name;
        this.bytes = bytes;
        this.marked = decoded.startsWith(BYTE_ORDER_MARK);
        this.text = marked ? decoded.substring(1) : decoded;
    }

    /**
     * Reads a file.
     *
     * @param path the file
     * @param name how problems call it: its path within the build folder
     * @throws BadInputException if there is no such file, or it is not UTF-8, with the place of the first wrong byte
     * @throws IOException if the disk fails
     */
    public static SourceFile read(Path path, String name) throws BadInputException, IOException {
        Place top = new Place(name, 1, 1);
        try {
            if (Files.isDirectory(path))
                throw new BadInputException(new Problem(top, "", "is a folder", "A file is needed here."));
            if (Files.size(path) > LONGEST) {
                throw new BadInputException(new Problem(
                        top,
                        "",
                        "holds " + Files.size(path) + " bytes",
                        "A file that people write is shorter than " + LONGEST + " bytes.",
                        "Look whether a recording was saved under this name."));
            }
            return of(path, name, Files.readAllBytes(path));
        } catch (NoSuchFileException e) {
            throw new BadInputException(
                    new Problem(top, "", "there is no such file", "Looked for it at " + path + "."));
        }
    }

    /** The file with other content, as if it had been read so. */
    SourceFile withBytes(byte[] changed) throws BadInputException {
        return of(path, name, changed);
    }

    /** A text that was not read from a disk, for checks and previews. */
    public static SourceFile of(Path path, String name, byte[] bytes) throws BadInputException {
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        CharBuffer decoded = CharBuffer.allocate(bytes.length);
        ByteBuffer source = ByteBuffer.wrap(bytes);
        CoderResult result = decoder.decode(source, decoded, true);
        decoded.flip();
        if (result.isError()) throw notUtf8(name, bytes[source.position()] & 0xFF, decoded.toString());
        return new SourceFile(path, name, bytes.clone(), decoded.toString());
    }

    private static BadInputException notUtf8(String name, int wrong, String before) {
        int line = 1 + (int) before.chars().filter(c -> c == '\n').count();
        String lastLine = before.substring(before.lastIndexOf('\n') + 1);
        return new BadInputException(new Problem(
                new Place(name, line, 1 + lastLine.codePointCount(0, lastLine.length())),
                "",
                String.format("byte %02X is not UTF-8", wrong),
                "Galena's files are UTF-8 text.",
                "Save the file as UTF-8 in your editor; signs such as µ, Ω and ° are often the cause."));
    }

    public Path path() {
        return path;
    }

    /** How problems call the file. */
    public String name() {
        return name;
    }

    /** The text without a byte order mark. */
    public String text() {
        return text;
    }

    public byte[] bytes() {
        return bytes.clone();
    }

    /** SHA-256 of the bytes. */
    public String digest() {
        return Digest.of(bytes);
    }

    /**
     * Where a character stands among the bytes.
     *
     * @param codePoint index of the character in {@link #text()}, counted in code points
     */
    int byteOffset(int codePoint) {
        String before = text.substring(0, text.offsetByCodePoints(0, codePoint));
        int mark = marked ? BYTE_ORDER_MARK.getBytes(StandardCharsets.UTF_8).length : 0;
        return mark + before.getBytes(StandardCharsets.UTF_8).length;
    }
}
