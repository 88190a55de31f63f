package galena.desk.server;

import galena.desk.server.Gate.Headers;
import galena.desk.server.Gate.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Fields;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/** Listens on the loopback address; asks the gate, then the answerer. */
public final class PageServer implements AutoCloseable {
    private static final int MOST_THREADS = 40;
    private static final int FEWEST_THREADS = 4;
    private static final int IDLE_MILLISECONDS = 60_000;
    private static final int HEADER_BYTES = 16_384;
    private static final String KEY = "key";

    /** Nothing from elsewhere, no script or style written into a page, no frame around it. */
    private static final String OWN_ONLY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:;"
                    + " connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    private final Server server;
    private final ServerConnector connector;
    private final String token = Gate.newToken();
    private final Consumer<Exception> faults;

    private PageServer(int port, Answerer answerer, Consumer<Exception> faults) {
        this.faults = faults;
        QueuedThreadPool threads = new QueuedThreadPool(MOST_THREADS, FEWEST_THREADS);
        threads.setName("page");
        threads.setDaemon(true);
        server = new Server(threads);
        HttpConfiguration configuration = new HttpConfiguration();
        configuration.setSendServerVersion(false);
        configuration.setRequestHeaderSize(HEADER_BYTES);
        connector = new ServerConnector(server, 1, 1, new HttpConnectionFactory(configuration));
        connector.setHost("127.0.0.1");
        connector.setPort(port);
        connector.setIdleTimeout(IDLE_MILLISECONDS);
        server.addConnector(connector);
        server.setHandler(new Handler.Abstract() {
            @Override
            public boolean handle(Request request, Response response, Callback callback) {
                PageServer.this.handle(request, response, callback, answerer);
                return true;
            }
        });
    }

    /**
     * @param port to listen on; 0 for any free one
     * @param answerer of what passes the gate
     * @param faults hears what went wrong inside
     * @throws IOException when the port can't be had
     */
    public static PageServer start(int port, Answerer answerer, Consumer<Exception> faults) throws IOException {
        PageServer started = new PageServer(port, answerer, faults);
        try {
            started.server.start();
        } catch (IOException taken) {
            started.close();
            throw taken;
        } catch (Exception odd) {
            started.close();
            throw new IOException("the server could not be started: " + odd.getMessage(), odd);
        }
        return started;
    }

    public int port() {
        return connector.getLocalPort();
    }

    /** The address to open; whoever knows it may use the server. */
    public String address() {
        return "http://127.0.0.1:" + port() + "/?" + KEY + "=" + token;
    }

    private void handle(Request request, Response response, Callback callback, Answerer answerer) {
        try {
            // HttpFields answers null for a header that isn't there
            Headers headers = new Headers(
                    header(request, HttpHeader.HOST.asString()),
                    header(request, HttpHeader.ORIGIN.asString()),
                    header(request, "Sec-Fetch-Site"),
                    header(request, HttpHeader.COOKIE.asString()));
            Map<String, String> query = query(request);
            String path = Request.getPathInContext(request);
            Optional<String> key = path.equals("/") ? Optional.ofNullable(query.get(KEY)) : Optional.empty();
            Gate gate = Gate.of(token, port());
            Optional<Refusal> refusal = gate.refuse(request.getMethod(), headers, key);
            if (refusal.isPresent()) {
                send(
                        response,
                        callback,
                        Reply.plain(refusal.get().status(), refusal.get().words()));
            } else if (key.isPresent()) {
                Map<String, String> admitted = Map.of("Set-Cookie", gate.cookie(), "Location", "/");
                send(response, callback, new Reply.Whole(303, "text/plain", new byte[0], admitted));
            } else {
                answer(request, response, callback, answerer, path, query);
            }
        } catch (Exception fault) {
            faults.accept(fault);
            send(response, callback, Reply.plain(500, "A fault in Galena; its terminal says more."));
        }
    }

    private void answer(
            Request request,
            Response response,
            Callback callback,
            Answerer answerer,
            String path,
            Map<String, String> query)
            throws Exception {
        String type = header(request, HttpHeader.CONTENT_TYPE.asString())
                .map(t -> t.split(";", 2)[0].strip().toLowerCase(Locale.ROOT))
                .orElse("");
        Reply reply;
        try (InputStream body = Content.Source.asInputStream(request)) {
            reply = answerer.answer(new Ask(request.getMethod(), path, query, type, body));
        } catch (TooLarge much) {
            reply = Reply.plain(413, "This is more than " + much.most() + " bytes, which is the most that is taken.");
        }
        if (reply instanceof Reply.Stream stream) feed(response, callback, stream.source());
        else send(response, callback, (Reply.Whole) reply);
    }

    private static Optional<String> header(Request request, String name) {
        return Optional.ofNullable(request.getHeaders().get(name));
    }

    private static Map<String, String> query(Request request) {
        Map<String, String> query = new LinkedHashMap<>();
        for (Fields.Field field : Request.extractQueryParameters(request)) {
            query.putIfAbsent(field.getName(), field.getValue());
        }
        return query;
    }

    private static void dress(Response response, String type) {
        response.getHeaders().put("Content-Type", type);
        response.getHeaders().put("Content-Security-Policy", OWN_ONLY);
        response.getHeaders().put("X-Content-Type-Options", "nosniff");
        response.getHeaders().put("Referrer-Policy", "no-referrer");
        response.getHeaders().put("Cross-Origin-Resource-Policy", "same-origin");
        response.getHeaders().put("Cross-Origin-Opener-Policy", "same-origin");
        response.getHeaders().put("Cache-Control", "no-store");
    }

    private static void send(Response response, Callback callback, Reply.Whole reply) {
        if (response.isCommitted()) {
            callback.failed(new IOException("the answer had begun"));
            return;
        }
        response.setStatus(reply.status());
        dress(response, reply.type());
        reply.headers().forEach((name, value) -> response.getHeaders().put(name, value));
        response.write(true, ByteBuffer.wrap(reply.bytes()), callback);
    }

    private void feed(Response response, Callback callback, Reply.Source source) {
        response.setStatus(200);
        dress(response, "text/event-stream;charset=utf-8");
        OutputStream out = Content.Sink.asOutputStream(response);
        try {
            source.feed(new Events(out));
            callback.succeeded();
        } catch (IOException gone) {
            callback.failed(gone); // the page was closed
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            callback.succeeded();
        }
    }

    /** Events in the form of the HTML standard, section 9.2. */
    private record Events(OutputStream out) implements Reply.Sink {
        @Override
        public void event(String name, String data) throws IOException {
            write("event: " + name + "\n"
                    + data.strip().lines().map(l -> "data: " + l + "\n").reduce("", String::concat) + "\n");
        }

        @Override
        public void beat() throws IOException {
            write(":\n\n");
        }

        private void write(String text) throws IOException {
            out.write(text.getBytes(StandardCharsets.UTF_8));
            out.flush();
        }
    }

    @Override
    public void close() {
        try {
            server.stop();
        } catch (Exception late) {
            faults.accept(late);
        }
    }
}
