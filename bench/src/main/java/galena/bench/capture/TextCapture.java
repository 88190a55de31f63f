package galena.bench.capture;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Text of any layout: looks at the first lines and hands over to the reader that fits. */
final class TextCapture {
    private static final int HEAD = 1 << 18;
    private static final int LINES = 400;
    /** A line of more numbers than this, with hardly any line beside it, is a record of its own. */
    private static final int MANY_CELLS = 64;

    private TextCapture() {}

    static Capture read(String place, String name, InputStream raw, Overrides overrides) throws IOException {
        InputStream in = ByteFeed.textBytes(raw);
        byte[] head = in.readNBytes(HEAD);
        if (looksBinary(head)) {
            throw new UnreadableCapture(
                    place,
                    "the contents are neither text nor a known form of samples",
                    "Save as text or WAV, or state the number format and rate of headerless IQ");
        }
        InputStream all = new SequenceInputStream(new ByteArrayInputStream(head), in);
        boolean whole = head.length < HEAD;
        String encoding = encoding(head);
        List<String> lines = lines(head, encoding);
        if (lines.stream().anyMatch(l -> l.stripLeading().startsWith("#") && OnePortReader.isOptionLine(l))) {
            return OnePortReader.read(place, name, all);
        }
        Optional<Capture> single = oneLine(place, name, head, all, lines, overrides);
        if (single.isPresent()) return single.get();
        if (!whole && lines.size() > 1 && lines.size() < LINES) lines.remove(lines.size() - 1); // cut off in its middle
        if (LogReader.looksLikeLog(lines, overrides)) return LogReader.read(place, name, all, lines, overrides);
        Block block = Block.best(lines, overrides)
                .filter(b -> b.last() > b.first())
                .orElseThrow(() -> noNumbers(place, lines));
        refuseCommaForBoth(place, block);
        refuseSpectrum(place, block);
        refuseMissingColumns(place, block, overrides);
        TextLayout layout = TextLayout.of(block, overrides);
        if (layout.channels().length == 0) {
            throw new UnreadableCapture(
                    place, "only a time column was found, no values", "Name the columns that hold values");
        }
        Capture capture = new TableReader(place, layout, block, overrides).read(name, all);
        Understanding u = capture.understanding();
        return new Capture(
                name,
                capture.content(),
                new Understanding(
                        u.layout(),
                        encoding + ", " + u.encoding(),
                        u.intervalSource(),
                        u.intervalError(),
                        u.read(),
                        u.skipped(),
                        u.heading(),
                        u.notes()));
    }

    private static UnreadableCapture noNumbers(String place, List<String> lines) {
        String first = lines.isEmpty()
                ? ""
                : lines.get(0).substring(0, Math.min(40, lines.get(0).length()));
        return new UnreadableCapture(
                place,
                "no rows of numbers were found; it begins \""
                        + first.replaceAll("\\p{Cntrl}", " ").trim() + "\"",
                "Save the samples as delimited text, or state the separator and decimal mark");
    }

    static boolean looksBinary(byte[] head) {
        int control = 0;
        for (byte b : head) if (b >= 0 && b < ' ' && b != '\t' && b != '\n' && b != '\r' && b != '\f') control++;
        return control > head.length / 200;
    }

    private static String encoding(byte[] head) {
        int end = head.length;
        while (end > 0 && end > head.length - 4 && head[end - 1] < 0) end--; // a character may be cut at the end
        try {
            StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(head, 0, end));
            return "UTF-8";
        } catch (CharacterCodingException e) {
            return "Latin-1";
        }
    }

    private static List<String> lines(byte[] head, String encoding) {
        String text = new String(head, encoding.equals("UTF-8") ? StandardCharsets.UTF_8 : StandardCharsets.ISO_8859_1);
        List<String> lines = new ArrayList<>(Arrays.asList(text.split("\r\n|\n|\r", LINES + 1)));
        if (lines.size() > LINES) lines.remove(LINES);
        return lines;
    }

    private static Optional<Capture> oneLine(
            String place, String name, byte[] head, InputStream all, List<String> lines, Overrides overrides)
            throws IOException {
        int longest = 0;
        for (int k = 1; k < lines.size(); k++)
            if (lines.get(k).length() > lines.get(longest).length()) longest = k;
        if (lines.isEmpty() || lines.get(longest).length() < 3 * MANY_CELLS) return Optional.empty();
        long others = lines.stream()
                .filter(l -> l.length() > lines.get(0).length() / 2 && l.length() > 3 * MANY_CELLS)
                .count();
        if (others > 4) return Optional.empty();
        String sample = lines.get(longest)
                .substring(0, Math.min(4096, lines.get(longest).length()));
        for (char separator : overrides.separator().map(c -> new char[] {c}).orElse(new char[] {'\t', ';', ',', ' '})) {
            Dialect dialect = new Dialect(
                    separator,
                    overrides
                            .decimal()
                            .orElse(
                                    separator == ','
                                            ? '.'
                                            : sample.indexOf('.') < 0 && sample.indexOf(',') >= 0 ? ',' : '.'),
                    (char) 0);
            List<String> cells = dialect.cells(sample);
            long numbers =
                    cells.stream().filter(c -> !Double.isNaN(dialect.number(c))).count();
            if (cells.size() > MANY_CELLS && numbers > 0.9 * cells.size()) {
                return Optional.of(readLine(place, name, head, all, lines, longest, dialect, overrides));
            }
        }
        return Optional.empty();
    }

    private static Capture readLine(
            String place,
            String name,
            byte[] head,
            InputStream all,
            List<String> lines,
            int line,
            Dialect dialect,
            Overrides overrides)
            throws IOException {
        all.skipNBytes(lineStart(head, line));
        SampleStore store = new SampleStore(1, overrides.keep());
        long bad = OneLineReader.read(all, dialect, store, place);
        Optional<Heading.StatedInterval> words = line == 0
                ? Optional.empty()
                : Heading.of(lines.subList(0, line), dialect).interval();
        if (store.rows() < 8)
            throw new UnreadableCapture(
                    place, "only " + store.rows() + " samples were found", "Record at least a few hundred");
        if (overrides.interval().isEmpty() && words.isEmpty()) {
            throw new UnreadableCapture(
                    place,
                    "all samples stand in one line and nothing tells the time between them",
                    "State the interval");
        }
        double interval =
                overrides.interval().orElseGet(() -> words.orElseThrow().seconds());
        List<Note> notes = bad == 0
                ? List.of()
                : List.of(new Note(
                        Note.Kind.ROWS_SKIPPED,
                        bad + " cells hold no number; the longest stretch without them is used"));
        List<Channel> channels = store.channels(
                List.of("samples"),
                List.of("V"),
                new double[] {overrides.scale().orElse(1)},
                new double[1]);
        boolean audio = overrides.kind().map(k -> k == Overrides.Kind.AUDIO).orElse(false);
        return new Capture(
                name,
                new Waveforms(interval, 0, channels, false, audio),
                new Understanding(
                        "all samples in line " + (line + 1),
                        dialect.words(),
                        overrides.interval().isPresent() ? "stated" : "heading",
                        0,
                        store.rows(),
                        bad,
                        line,
                        notes));
    }

    private static int lineStart(byte[] head, int line) {
        int at = 0;
        for (int k = 0; k < line; k++) {
            while (head[at] != '\n' && head[at] != '\r') at++;
            at += head[at] == '\r' && at + 1 < head.length && head[at + 1] == '\n' ? 2 : 1;
        }
        return at;
    }

    /** With the comma as separator and as decimal mark, a row of two numbers has four cells of digits. */
    private static void refuseCommaForBoth(String place, Block block) throws UnreadableCapture {
        if (block.dialect().separator() != ',' || block.columns().size() < 3) return;
        int rows = 0, suspicious = 0;
        for (int k = block.first(); k <= block.last(); k++) {
            List<String> cells = block.dialect().cells(block.lines().get(k));
            if (cells.stream().anyMatch(c -> c.indexOf('.') >= 0)) return;
            rows++;
            if (cells.size() % 2 == 0 && cells.get(1).matches("0\\d+")) suspicious++;
        }
        if (suspicious > rows / 2) {
            throw new UnreadableCapture(
                    place + ":" + (block.first() + 1),
                    "the comma seems to be both separator and decimal mark (\""
                            + block.lines().get(block.first()) + "\")",
                    "Save with a semicolon or tab between cells, or with decimal points");
        }
    }

    private static void refuseMissingColumns(String place, Block block, Overrides overrides) throws UnreadableCapture {
        int there = block.dialect().cells(block.lines().get(block.last())).size();
        int asked = Math.max(
                overrides.timeColumn().orElse(0),
                overrides.columns().stream().mapToInt(c -> c).max().orElse(0));
        if (asked > there) {
            throw new UnreadableCapture(
                    place + ":" + (block.last() + 1),
                    "column " + asked + " was asked for, the row has " + there,
                    "State one of them, or another separator");
        }
    }

    /** A column of frequencies beside one of decibels is a spectrum that somebody else has computed. */
    private static void refuseSpectrum(String place, Block block) throws UnreadableCapture {
        for (int k = Math.max(0, block.first() - 3); k < block.first(); k++) {
            String line = block.lines().get(k).toLowerCase(java.util.Locale.ROOT);
            if (line.matches(".*(freq|\\(hz\\)|\\[hz\\]).*")
                    && line.matches(".*\\bdb(m|v|uv|µv)?\\b.*")
                    && !line.contains("time")) {
                throw new UnreadableCapture(
                        place + ":" + (k + 1),
                        "this is a spectrum (frequency and level), not samples",
                        "Save the samples that it was made from");
            }
        }
    }
}
