package galena.build.source;

/**
 * A place in a file.
 *
 * @param file the name shown, relative to the build folder
 * @param line from 1
 * @param column in characters, from 1
 */
public record Place(String file, int line, int column) {
    public Place {
        if (line < 1 || column < 1) throw new IllegalArgumentException("lines and columns count from 1");
    }

    @Override
    public String toString() {
        return file + ":" + line + ":" + column;
    }
}
