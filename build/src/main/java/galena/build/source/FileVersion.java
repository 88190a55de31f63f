package galena.build.source;

import galena.build.source.Node.Mapping;
import galena.build.source.Node.Scalar;
import java.util.List;
import java.util.Optional;

/**
 * The version line of a file, {@code galena: 1}, and the steps that bring older files up to date. A file of an older version
 * is read as if migrated; the builder's text is only changed when the migrated file is saved on request.
 */
public final class FileVersion {
    /** The key of the version line. */
    public static final String KEY = "galena";

    /** The version that this program writes. */
    public static final int CURRENT = 1;

    /** One step from a version to the next, as edits of single values so that comments stay. */
    public interface Migration {
        /** The version that it starts from; it ends at the next. */
        int from();

        /** The edits, in order, but for the version line, which is changed by the caller. */
        List<Edit> edits(Mapping top);
    }

    /** Every step there is: none so far. */
    private static final List<Migration> MIGRATIONS = List.of();

    private FileVersion() {}

    /**
     * The file brought to the current version; the same file if it has it.
     *
     * @param problems is added to if the version is missing or unreadable; the file is then taken to be current
     * @throws BadInputException if the file is no YAML or newer than this program
     */
    public static SourceFile migrated(SourceFile file, Problems problems) throws BadInputException {
        return migrated(file, problems, CURRENT, MIGRATIONS);
    }

    static SourceFile migrated(SourceFile file, Problems problems, int current, List<Migration> migrations)
            throws BadInputException {
        SourceFile migrated = file;
        for (int version = version(file, problems, current); version < current; version++)
            migrated = step(migrated, version, migrations);
        return migrated;
    }

    private static SourceFile step(SourceFile file, int version, List<Migration> migrations) throws BadInputException {
        Migration step = migrations.stream()
                .filter(m -> m.from() == version)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no migration leads on from version " + version));
        SourceFile changed = file;
        for (Edit edit : step.edits(YamlReader.read(file, new Problems()))) changed = Editor.apply(changed, edit);
        return Editor.apply(changed, Edit.change(KEY, String.valueOf(version), String.valueOf(version + 1)));
    }

    private static int version(SourceFile file, Problems problems, int current) throws BadInputException {
        Mapping top = YamlReader.read(file, new Problems());
        Optional<Node> value = top.value(KEY);
        String remedy = "Write as the first line: galena: " + current;
        if (value.isEmpty()) {
            problems.add(new Problem(top.place(), "", "names no version", "A file says which version it is.", remedy));
            return current;
        }
        Place place = value.get().place();
        String text = value.get() instanceof Scalar scalar
                ? scalar.text()
                : value.get().kind();
        if (!text.matches("[1-9]\\d{0,5}")) {
            String found = '"' + text + "\" is no version";
            problems.add(new Problem(place, KEY, found, "A version is a whole number from 1 up.", remedy));
            return current;
        }
        int version = Integer.parseInt(text);
        if (version <= current) return version;
        throw new BadInputException(new Problem(
                place,
                KEY,
                "version " + version + " is newer than this program",
                "This program reads versions 1 to " + current + ".",
                "Use the Galena that wrote the file, or a newer one."));
    }
}
