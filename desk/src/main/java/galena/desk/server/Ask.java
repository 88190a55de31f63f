package galena.desk.server;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;

/** One request that has passed the gate. */
public final class Ask {
    private static final int PIECE = 8192;

    private final String method;
    private final String path;
    private final Map<String, String> query;
    private final String type;
    private final InputStream body;

    /**
     * @param method in capitals
     * @param path decoded, begins with a slash
     * @param query decoded; of a name given twice the first
     * @param type of the body, in lower case without parameters; empty for none
     * @param body read at most once
     */
    public Ask(String method, String path, Map<String, String> query, String type, InputStream body) {
        this.method = method;
        this.path = path;
        this.query = Map.copyOf(query);
        this.type = type;
        this.body = body;
    }

    public String method() {
        return method;
    }

    public String path() {
        return path;
    }

    /** A parameter of the address. */
    public Optional<String> parameter(String name) {
        return Optional.ofNullable(query.get(name));
    }

    public String type() {
        return type;
    }

    /**
     * The body as text.
     *
     * @throws TooLarge when it holds more than {@code most} bytes
     */
    public String text(long most) throws IOException, TooLarge {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        copy(out, most);
        return out.toString(StandardCharsets.UTF_8);
    }

    /**
     * Hands the body on piece by piece.
     *
     * @throws TooLarge when it holds more than {@code most} bytes; that much has been handed on by then
     */
    public void copy(OutputStream to, long most) throws IOException, TooLarge {
        byte[] piece = new byte[PIECE];
        long left = most;
        for (int read = body.read(piece); read >= 0; read = body.read(piece)) {
            if (read > left) throw new TooLarge(most);
            left -= read;
            to.write(piece, 0, read);
        }
    }
}
