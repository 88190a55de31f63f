package galena.desk.page;

import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.source.BadInputException;
import galena.build.source.Digest;
import galena.build.source.Edit;
import galena.build.source.Saver;
import galena.build.source.SourceFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * An edit of the whole build file: another text takes the place of the present one. In the history it stands as any other edit does,
 * each text named by what it is and the beginning of its digest; the texts themselves are kept in the cache. Without its cache such an
 * edit can't be undone, and undoing says so.
 */
final class Whole {
    /** No value of a build has this path. */
    private static final String PATH = Layout.BUILD.place();

    private static final int MARK = 12;

    /** Whatever lies beside the build and must fit the text that comes. */
    private static final List<Layout> BESIDE = List.of(Layout.LOG, Layout.CALIBRATION, Layout.DRAWER, Layout.STATIONS);

    private Whole() {}

    static boolean is(Edit edit) {
        return edit.path().equals(PATH);
    }

    /**
     * The edit that puts a text in the place of the present one. Both texts are on the disk when this returns.
     *
     * @param name of the text that comes, in words
     */
    static Edit to(BuildFolder now, byte[] text, String name) throws BadInputException, IOException {
        return new Edit(
                PATH,
                Optional.of(kept(now.folder(), now.build().file().bytes(), "as it was")),
                Optional.of(kept(now.folder(), text, name)));
    }

    private static String kept(Path folder, byte[] text, String name) throws BadInputException, IOException {
        String mark = Digest.of(text).substring(0, MARK);
        Path file = place(folder, mark);
        if (!Files.exists(file)) Saver.create(SourceFile.of(file, PATH, text));
        return name + " (" + mark + ")";
    }

    private static Path place(Path folder, String mark) {
        return Layout.CACHE.in(folder).resolve("build-" + mark + ".yaml");
    }

    private static String mark(String named) {
        return named.replaceFirst("^.*\\(([0-9a-f]*)\\)$", "$1");
    }

    /** Which of the two texts of such an edit stands in the build; empty for neither. */
    static Optional<String> standing(BuildFolder folder, Edit edit) {
        String now = folder.build().file().digest().substring(0, MARK);
        return edit.after().filter(after -> mark(after).equals(now)).or(() -> edit.before()
                .filter(before -> mark(before).equals(now)));
    }

    /**
     * Makes the edit, provided that the text that stands there is the one it was made for.
     *
     * @throws BadInputException when another text stands there, the one that comes is no longer kept, or it does not fit what lies
     *     beside it; nothing is written then
     */
    static BuildFolder make(BuildFolder folder, Edit edit) throws BadInputException, IOException {
        String before = edit.before().orElse(""), after = edit.after().orElse("");
        if (!mark(before).equals(folder.build().file().digest().substring(0, MARK)))
            throw Typed.bad(
                    PATH,
                    "it has been changed since",
                    "A whole file is put back only over the text that it gave way to.",
                    Optional.of("Undo or take back what was changed since."));
        Path kept = place(folder.folder(), mark(after));
        if (!Files.exists(kept))
            throw Typed.bad(PATH, "the text " + after + " is gone", "It was kept in .cache.", Optional.empty());
        byte[] text = Files.readAllBytes(kept);
        fits(folder, text);
        SourceFile now = folder.build().file();
        Saver.save(now, SourceFile.of(now.path(), now.name(), text));
        return BuildFolder.open(folder.folder());
    }

    /** Opens the text beside what it would stand beside, in a folder of its own. */
    private static void fits(BuildFolder folder, byte[] text) throws BadInputException, IOException {
        Path trial = Files.createTempDirectory(Layout.CACHE.in(folder.folder()), "trial");
        try {
            Files.createDirectories(Layout.BENCH.in(trial));
            Files.write(Layout.BUILD.in(trial), text);
            for (Layout each : BESIDE)
                if (Files.exists(each.in(folder.folder()))) Files.copy(each.in(folder.folder()), each.in(trial));
            BuildFolder.open(trial);
        } finally {
            for (Layout each : BESIDE) Files.deleteIfExists(each.in(trial));
            Files.deleteIfExists(Layout.BUILD.in(trial));
            Files.deleteIfExists(Layout.BENCH.in(trial));
            Files.deleteIfExists(trial);
        }
    }

    /** The text of a build that lies in a folder of its own within this one. */
    static byte[] beside(Path folder, String name) throws BadInputException, IOException {
        Path other = folder.resolve(BenchDrop.name(name));
        if (!Files.isDirectory(other) || !other.toRealPath().startsWith(folder.toRealPath()))
            throw Typed.bad(name, "there is no such folder here", "Ask for a proposal first.", Optional.empty());
        return BuildFolder.open(other).build().file().text().getBytes(StandardCharsets.UTF_8);
    }
}
