package galena.build.cache;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.fault.Fault;
import galena.build.folder.BuildFolder;
import galena.build.folder.CacheKey;
import galena.build.folder.Layout;
import galena.build.folder.Overlay;
import galena.build.source.Digest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What was computed of one build under one overlay, kept in {@link Layout#CACHE}. */
public final class Cache {
    /** Entries of one kind that are kept: as many settings as a builder goes back and forth between. */
    private static final int KEPT = 6;

    private static final int NAME_DIGITS = 24;

    private final Path place;
    private final String key;
    private final ObjectMapper mapper;

    private Cache(Path place, String key, ObjectMapper mapper) {
        this.place = place;
        this.key = key;
        this.mapper = mapper;
    }

    /**
     * @param faults the build's own, which cached answers name by their words
     * @throws IOException when the drawer can't be read for the key
     */
    public static Cache of(BuildFolder folder, Overlay overlay, List<Fault> faults) throws IOException {
        String key = CacheKey.of(folder, overlay, program());
        return new Cache(Layout.CACHE.in(folder.folder()), key, Codec.mapper(faults));
    }

    /**
     * A place for one answer.
     *
     * @param kind a word, for the file's name
     * @param method of making it, its own version included: another method never meets the old one's answers
     * @param type of the answer
     */
    public record Slot<T>(String kind, String method, TypeReference<T> type) {}

    /** What is kept there; empty when nothing is, or nothing that fits. */
    public <T> Optional<T> kept(Slot<T> slot) {
        String full = full(slot);
        return read(file(slot, full), full, slot.type);
    }

    /** Keeps an answer, in place of the one that was there. */
    public <T> void keep(Slot<T> slot, T answer) {
        String full = full(slot);
        write(file(slot, full), slot.kind, full, answer, slot.type);
    }

    private String full(Slot<?> slot) {
        return Digest.of((key + "\n" + slot.kind + "\n" + slot.method).getBytes(StandardCharsets.UTF_8));
    }

    private Path file(Slot<?> slot, String full) {
        return place.resolve(slot.kind + "-" + full.substring(0, NAME_DIGITS) + ".json");
    }

    private <T> Optional<T> read(Path file, String full, TypeReference<T> type) {
        if (!Files.isRegularFile(file)) return Optional.empty();
        try {
            JsonNode entry = mapper.readTree(Files.readAllBytes(file));
            if (entry == null || !full.equals(entry.path("key").asText(""))) return Optional.empty();
            return Optional.ofNullable(mapper.readValue(mapper.treeAsTokens(entry.get("value")), type));
        } catch (IOException | RuntimeException damaged) {
            return Optional.empty(); // it is made again and written over
        }
    }

    private <T> void write(Path file, String kind, String full, T made, TypeReference<T> type) {
        try {
            Files.createDirectories(place);
            ObjectNode entry = mapper.createObjectNode().put("key", full);
            entry.set("value", mapper.readTree(mapper.writerFor(type).writeValueAsBytes(made)));
            Path half = Files.createTempFile(place, kind, ".half");
            Files.write(half, mapper.writeValueAsBytes(entry));
            Files.move(half, file, StandardCopyOption.REPLACE_EXISTING);
            forget(kind);
        } catch (IOException fullOrForbidden) {
            return; // a cache that can't be written costs time the next time, and nothing else
        }
    }

    /** The oldest entries of a kind go. */
    private void forget(String kind) throws IOException {
        List<Path> entries;
        try (Stream<Path> all = Files.list(place)) {
            entries = all.filter(p -> String.valueOf(p.getFileName()).startsWith(kind + "-"))
                    .sorted(Comparator.comparingLong((Path p) -> -p.toFile().lastModified()))
                    .skip(KEPT)
                    .toList();
        }
        for (Path old : entries) Files.deleteIfExists(old);
    }

    /** The version that the program calls itself, and the file it runs from, so that a program built anew trusts nothing old. */
    private static String program() {
        String version = String.valueOf(Cache.class.getPackage().getImplementationVersion());
        try {
            Path file = Path.of(Cache.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
            if (Files.isDirectory(file))
                file = file.resolve(Cache.class.getName().replace('.', '/') + ".class");
            return version + " " + Files.getLastModifiedTime(file) + " " + Files.size(file);
        } catch (IOException | java.net.URISyntaxException | RuntimeException unknown) {
            return version;
        }
    }
}
