package galena.build.source;

import java.util.Optional;

/**
 * A change of one value in a file.
 *
 * @param path where: {@code parts.Ct.set}
 * @param before the text that stands there now; empty to add the key behind the others of its group
 * @param after the text that shall stand there; empty to take the key out
 */
public record Edit(String path, Optional<String> before, Optional<String> after) {
    public Edit {
        if (path.isEmpty()) throw new IllegalArgumentException("an edit names its place");
        if (before.isEmpty() && after.isEmpty()) throw new IllegalArgumentException("an edit of nothing to nothing");
    }

    public static Edit change(String path, String before, String after) {
        return new Edit(path, Optional.of(before), Optional.of(after));
    }

    public static Edit add(String path, String after) {
        return new Edit(path, Optional.empty(), Optional.of(after));
    }

    public static Edit remove(String path, String before) {
        return new Edit(path, Optional.of(before), Optional.empty());
    }

    /** The edit that undoes this one. */
    public Edit undo() {
        return new Edit(path, after, before);
    }
}
