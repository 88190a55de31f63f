package galena.build.folder;

import java.nio.file.Path;

/** The fixed places in a build folder, with the names by which problems call them. */
public enum Layout {
    BUILD("build.yaml"),
    DRAWER("drawer.yaml"),
    STATIONS("stations.yaml"),
    LOG("bench/log.yaml"),
    CALIBRATION("calibration.yaml"),
    /** Captures and the log. */
    BENCH("bench"),
    /** What is published. */
    PACKET("packet"),
    /** Safe to delete at any time. */
    CACHE(".cache");

    private final String place;

    Layout(String place) {
        this.place = place;
    }

    /** Relative to the folder, with {@code /} on every system. */
    public String place() {
        return place;
    }

    public Path in(Path folder) {
        return folder.resolve(place);
    }
}
