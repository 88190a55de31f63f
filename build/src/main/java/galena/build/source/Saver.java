package galena.build.source;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.Arrays;

/**
 * Writes a changed file whole or not at all: into a temporary file beside it, forced to the disk, then moved over it in one
 * step. A file that no longer holds what was read is left alone.
 */
public final class Saver {
    private Saver() {}

    /**
     * @param read the file as it was read
     * @param changed what it shall hold, from {@link Editor#apply}
     * @throws BadInputException if the file changed on disk since it was read
     * @throws IOException if the disk fails or can't move files in one step; the old file stands then
     */
    public static synchronized void save(SourceFile read, SourceFile changed) throws BadInputException, IOException {
        Path target = Files.exists(read.path()) ? read.path().toRealPath() : read.path(); // a link stays a link
        Path temporary = Files.createTempFile(folderOf(target), "." + target.getFileName(), ".new");
        try {
            force(temporary, changed.bytes());
            copyPermissions(target, temporary);
            requireUnchanged(read, target);
            Files.move(temporary, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(temporary);
        }
    }

    /**
     * Writes a file that isn't there yet, with the folders it needs.
     *
     * @throws BadInputException if it has come into being meanwhile
     */
    public static synchronized void create(SourceFile made) throws BadInputException, IOException {
        Path folder = folderOf(made.path());
        Files.createDirectories(folder);
        Path temporary = Files.createTempFile(folder, "." + made.path().getFileName(), ".new");
        try {
            force(temporary, made.bytes());
            if (Files.exists(made.path()))
                throw new BadInputException(new Problem(
                        new Place(made.name(), 1, 1),
                        "",
                        "was written meanwhile",
                        "What another program wrote is never overwritten.",
                        "Repeat the change."));
            openToAll(temporary, made.path());
            Files.move(temporary, made.path(), StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(temporary);
        }
    }

    /** A new file gets the rights that any new file gets here, not the private ones of a temporary file. */
    private static void openToAll(Path temporary, Path target) throws IOException {
        Path probe = target.resolveSibling(temporary.getFileName() + "-rights");
        Files.createFile(probe);
        try {
            copyPermissions(probe, temporary);
        } finally {
            Files.delete(probe);
        }
    }

    private static Path folderOf(Path target) {
        Path folder = target.toAbsolutePath().getParent();
        if (folder == null) throw new IllegalArgumentException(target + " is no file");
        return folder;
    }

    private static void requireUnchanged(SourceFile read, Path target) throws BadInputException, IOException {
        boolean same = Files.exists(target) && Arrays.equals(Files.readAllBytes(target), read.bytes());
        if (same) return;
        throw new BadInputException(new Problem(
                new Place(read.name(), 1, 1),
                "",
                Files.exists(target) ? "changed on disk since it was read" : "is gone from the disk",
                "What another program wrote is never overwritten.",
                "Read it again, then repeat the change."));
    }

    private static void force(Path file, byte[] bytes) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            ByteBuffer left = ByteBuffer.wrap(bytes);
            while (left.hasRemaining()) channel.write(left);
            channel.force(true);
        }
    }

    /** Temporary files are private; the file keeps the rights it had, where the disk has such rights. */
    private static void copyPermissions(Path from, Path to) throws IOException {
        PosixFileAttributeView source = Files.getFileAttributeView(from, PosixFileAttributeView.class);
        PosixFileAttributeView target = Files.getFileAttributeView(to, PosixFileAttributeView.class);
        if (source != null && target != null && Files.exists(from))
            target.setPermissions(source.readAttributes().permissions());
    }
}
