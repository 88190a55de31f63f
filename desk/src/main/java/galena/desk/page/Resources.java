package galena.desk.page;

import galena.desk.server.Reply;
import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/** The page's own files, out of the jar: one folder, plain names, known kinds. */
final class Resources {
    private static final Pattern NAME = Pattern.compile("[a-z][a-z0-9-]*\\.(html|js|css|svg)");
    private static final Map<String, String> TYPES = Map.of(
            "html", "text/html;charset=utf-8",
            "js", "text/javascript;charset=utf-8",
            "css", "text/css;charset=utf-8",
            "svg", "image/svg+xml");

    private Resources() {}

    static Reply of(String name) throws IOException {
        if (!NAME.matcher(name).matches()) return Reply.missing();
        try (InputStream in = Resources.class.getResourceAsStream("/galena/page/" + name)) {
            if (in == null) return Reply.missing();
            return Reply.bytes(type(name), in.readAllBytes());
        }
    }

    /** The type of a file by its ending; plain bytes for one that is not known. */
    static String type(String name) {
        String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        return TYPES.getOrDefault(ending, "application/octet-stream");
    }
}
