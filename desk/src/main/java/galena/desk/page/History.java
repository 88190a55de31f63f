package galena.desk.page;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.folder.Layout;
import galena.build.source.Edit;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * The edits made so far, to be undone and redone, newest first. They are kept in the build's cache, a line each, forced to the disk
 * before the build itself is written: after a crash the last line may tell of an edit that was not made, which undoing then refuses
 * by its own check, and never the other way round. Not for several threads.
 */
final class History {
    private static final String FILE = "history.jsonl";
    private static final int MOST = 500;
    static final String WRITTEN = "written";
    static final String UNDONE = "undone";
    static final String REDONE = "redone";
    private static final String REFUSED = "refused, ";
    private static final ObjectMapper MAPPER = new ObjectMapper();

    /**
     * A line of the history.
     *
     * @param edit as made
     * @param when ISO 8601
     * @param how {@link #WRITTEN}, {@link #UNDONE} or {@link #REDONE}
     */
    record Line(Edit edit, String when, String how) {}

    private final Path file;
    private final Deque<Edit> done = new ArrayDeque<>();
    private final Deque<Edit> undone = new ArrayDeque<>();
    private final Deque<Line> lines = new ArrayDeque<>();

    private History(Path file) {
        this.file = file;
    }

    /** Reads what is kept for a folder; a cache that was deleted or spoilt is an empty history. */
    static History of(Path folder) throws IOException {
        History history = new History(Layout.CACHE.in(folder).resolve(FILE));
        if (!Files.exists(history.file)) return history;
        for (String text : Files.readAllLines(history.file, StandardCharsets.UTF_8)) {
            Optional<Line> line = read(text);
            line.ifPresent(history::replay);
        }
        return history;
    }

    private void replay(Line line) {
        if (line.how().startsWith(REFUSED)) {
            unplay(new Line(line.edit(), line.when(), line.how().substring(REFUSED.length())));
            return;
        }
        switch (line.how()) {
            case UNDONE -> {
                done.poll();
                undone.push(line.edit().undo());
            }
            case REDONE -> {
                undone.poll();
                done.push(line.edit());
            }
            default -> {
                done.push(line.edit());
                undone.clear();
            }
        }
        keep(line);
    }

    private void keep(Line line) {
        lines.push(line);
        if (lines.size() > MOST) lines.removeLast();
        if (done.size() > MOST) done.removeLast();
    }

    /** The edit that would undo the last one. */
    Optional<Edit> undoing() {
        return Optional.ofNullable(done.peek()).map(Edit::undo);
    }

    /** The edit that would do again what was undone last. */
    Optional<Edit> redoing() {
        return Optional.ofNullable(undone.peek());
    }

    /** Newest first. */
    List<Line> lines(int most) {
        return new ArrayList<>(lines).subList(0, Math.min(most, lines.size()));
    }

    /** Notes an edit that is about to be written. */
    void note(Line line) throws IOException {
        append(line, line.how());
        replay(line);
    }

    /**
     * Compares the newest line with what stands in the build: a crash may have come between the line and its edit, which is then taken
     * back.
     *
     * @param standing the text at an edit's place, if there is one
     */
    void settle(Function<Edit, Optional<String>> standing) throws IOException {
        Line newest = lines.peek();
        if (newest == null) return;
        Optional<String> now = standing.apply(newest.edit());
        if (!now.equals(newest.edit().after()) && now.equals(newest.edit().before())) refuse(newest);
    }

    /** Takes back the newest line: its edit could not be made. */
    void refuse(Line line) throws IOException {
        append(line, REFUSED + line.how());
        unplay(line);
    }

    private void unplay(Line line) {
        lines.poll();
        switch (line.how()) {
            case UNDONE -> {
                undone.poll();
                done.push(line.edit().undo());
            }
            case REDONE -> {
                done.poll();
                undone.push(line.edit());
            }
            default -> done.poll();
        }
    }

    private void append(Line line, String how) throws IOException {
        ObjectNode json = MAPPER.createObjectNode();
        json.put("when", line.when()).put("how", how).put("path", line.edit().path());
        line.edit().before().ifPresent(before -> json.put("before", before));
        line.edit().after().ifPresent(after -> json.put("after", after));
        append(MAPPER.writeValueAsString(json) + "\n");
    }

    private void append(String text) throws IOException {
        Path parent = file.getParent();
        if (parent != null) Files.createDirectories(parent);
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
            ByteBuffer left = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
            while (left.hasRemaining()) channel.write(left);
            channel.force(false);
        }
    }

    /** A line cut short by a crash is none. */
    private static Optional<Line> read(String text) {
        try {
            JsonNode json = MAPPER.readTree(text);
            if (json == null || !json.hasNonNull("path")) return Optional.empty();
            Optional<String> before = Optional.ofNullable(json.get("before")).map(JsonNode::asText);
            Optional<String> after = Optional.ofNullable(json.get("after")).map(JsonNode::asText);
            if (before.isEmpty() && after.isEmpty()) return Optional.empty();
            Edit edit = new Edit(json.get("path").asText(), before, after);
            return Optional.of(
                    new Line(edit, json.path("when").asText(), json.path("how").asText()));
        } catch (IOException cutShort) {
            return Optional.empty();
        }
    }
}
