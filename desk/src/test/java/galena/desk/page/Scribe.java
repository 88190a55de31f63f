package galena.desk.page;

import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;

/** Writes one edit after the other into a build, and says each when it is acknowledged, until it is killed. */
final class Scribe {
    private Scribe() {}

    public static void main(String[] arguments) throws Exception {
        Path folder = Path.of(arguments[0]);
        try (Notebook notebook = Notebook.open(folder, Clock.systemUTC(), Throwable::printStackTrace)) {
            for (int k = 0; ; k++) {
                String seen = text(notebook), text = (k % 99 + 1) + " %";
                if (text.equals(seen)) continue;
                // what is about to be written is said first: it may or may not be there after a kill
                System.out.println("writing " + text);
                notebook.write("parts.Ct.set", Optional.of(seen), Optional.of(text));
                System.out.println("written " + text);
            }
        }
    }

    static String text(Notebook notebook) {
        return NotebookJson.text(notebook.folder().build(), "parts.Ct.set").orElseThrow();
    }
}
