package galena.desk.page;

import galena.build.folder.Layout;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * How a build's files stand on the disk: enough to tell that another program has written one.
 *
 * @param stamps file to time, size and identity; "none" for one that isn't there
 */
record Disk(Map<String, String> stamps) {
    private static final List<Layout> WATCHED =
            List.of(Layout.BUILD, Layout.DRAWER, Layout.STATIONS, Layout.LOG, Layout.CALIBRATION);

    Disk {
        stamps = Map.copyOf(stamps);
    }

    static Disk of(Path folder) throws IOException {
        Map<String, String> stamps = new LinkedHashMap<>();
        for (Layout layout : WATCHED) stamps.put(layout.place(), stamp(layout.in(folder)));
        return new Disk(stamps);
    }

    private static String stamp(Path file) throws IOException {
        try {
            BasicFileAttributes now = Files.readAttributes(file, BasicFileAttributes.class);
            return now.lastModifiedTime() + " " + now.size() + " " + now.fileKey();
        } catch (NoSuchFileException none) {
            return "none";
        }
    }
}
