package galena.build.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class SaverTest {
    @TempDir
    Path folder;

    private Path path;

    @BeforeEach
    void write() throws Exception {
        path = folder.resolve("build.yaml");
        Files.writeString(path, "a: 1\n");
    }

    private SourceFile read() throws Exception {
        return SourceFile.read(path, "build.yaml");
    }

    @Test
    void an_edit_reaches_the_disk_and_leaves_nothing_beside() throws Exception {
        Saver.save(read(), Editor.apply(read(), Edit.change("a", "1", "2")));
        assertThat(path).hasContent("a: 2\n");
        try (var files = Files.list(folder)) {
            assertThat(files).containsExactly(path);
        }
    }

    @Test
    void a_file_changed_meanwhile_is_never_overwritten() throws Exception {
        SourceFile read = read();
        SourceFile changed = Editor.apply(read, Edit.change("a", "1", "2"));
        Files.writeString(path, "a: 1\n# by hand\n");
        BadInputException bad = catchThrowableOfType(BadInputException.class, () -> Saver.save(read, changed));
        assertThat(bad.problems().get(0).found()).isEqualTo("changed on disk since it was read");
        assertThat(path).hasContent("a: 1\n# by hand\n");
        Files.delete(path);
        bad = catchThrowableOfType(BadInputException.class, () -> Saver.save(read, changed));
        assertThat(bad.problems().get(0).found()).isEqualTo("is gone from the disk");
        try (var files = Files.list(folder)) {
            assertThat(files).isEmpty();
        }
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void rights_and_links_stay() throws Exception {
        Files.setPosixFilePermissions(path, PosixFilePermissions.fromString("rw-r--r--"));
        Path link = Files.createSymbolicLink(folder.resolve("link.yaml"), path);
        SourceFile read = SourceFile.read(link, "link.yaml");
        Saver.save(read, Editor.apply(read, Edit.change("a", "1", "2")));
        assertThat(link).isSymbolicLink();
        assertThat(path).hasContent("a: 2\n");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(path)))
                .isEqualTo("rw-r--r--");
    }
}
