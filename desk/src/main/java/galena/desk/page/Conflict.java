package galena.desk.page;

import java.util.Optional;

/** One value was written here and elsewhere at the same time. Which of both shall stand is for the builder to say. */
final class Conflict extends Exception {
    private static final long serialVersionUID = 1;

    private final transient Three texts;
    private final String path;

    /**
     * What stands, stood, and shall stand; empty for nothing.
     *
     * @param seen before both changes
     * @param theirs in the file now
     * @param mine asked for here
     */
    record Three(Optional<String> seen, Optional<String> theirs, Optional<String> mine) {}

    Conflict(String path, Optional<String> seen, Optional<String> theirs, Optional<String> mine) {
        super(path + " was changed elsewhere meanwhile");
        this.path = path;
        texts = new Three(seen, theirs, mine);
    }

    String path() {
        return path;
    }

    Three texts() {
        return texts;
    }
}
