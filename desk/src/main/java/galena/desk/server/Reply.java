package galena.desk.server;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** What a request is answered with. */
public sealed interface Reply {
    /**
     * All of it at once.
     *
     * @param headers beside those of every answer
     */
    record Whole(int status, String type, byte[] bytes, Map<String, String> headers) implements Reply {
        public Whole {
            headers = Map.copyOf(headers);
        }
    }

    /** Events as they come, until the browser or the server hangs up. */
    record Stream(Source source) implements Reply {}

    /** Where events come from. */
    interface Source {
        /** Sends events until {@code to} fails or the source has no more; closes what it listens to before it returns. */
        void feed(Sink to) throws IOException, InterruptedException;
    }

    /** Where they go. */
    interface Sink {
        /**
         * @param name of the event
         * @param data in one line or several
         */
        void event(String name, String data) throws IOException;

        /** Sends nothing that is seen; fails when nobody listens any more. */
        void beat() throws IOException;
    }

    static Whole json(String text) {
        return json(200, text);
    }

    static Whole json(int status, String text) {
        return new Whole(status, "application/json;charset=utf-8", text.getBytes(StandardCharsets.UTF_8), Map.of());
    }

    static Whole bytes(String type, byte[] bytes) {
        return new Whole(200, type, bytes, Map.of());
    }

    static Whole plain(int status, String text) {
        return new Whole(status, "text/plain;charset=utf-8", text.getBytes(StandardCharsets.UTF_8), Map.of());
    }

    static Whole missing() {
        return plain(404, "There is nothing here.");
    }
}
