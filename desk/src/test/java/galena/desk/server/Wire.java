package galena.desk.server;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/** HTTP by hand, so that a request may say whatever an attacker's would. */
public final class Wire {
    private final int port;
    private final Map<String, String> headers = new LinkedHashMap<>();

    /** What came back. */
    public record Answer(int status, String head, String body) {
        public String header(String name) {
            return head.lines()
                    .filter(l -> l.toLowerCase(java.util.Locale.ROOT)
                            .startsWith(name.toLowerCase(java.util.Locale.ROOT) + ":"))
                    .map(l -> l.substring(name.length() + 1).strip())
                    .findFirst()
                    .orElse("");
        }
    }

    private Wire(int port) {
        this.port = port;
    }

    public static Wire to(int port) {
        return new Wire(port).with("Host", "127.0.0.1:" + port);
    }

    /** With a header; the last of a name counts, an empty value leaves it out. */
    public Wire with(String name, String value) {
        if (value.isEmpty()) headers.remove(name);
        else headers.put(name, value);
        return this;
    }

    /** As the page itself asks: with its cookie and its origin. */
    public Wire own(String cookie) {
        return with("Cookie", cookie).with("Origin", "http://127.0.0.1:" + port).with("Sec-Fetch-Site", "same-origin");
    }

    public Answer get(String path) throws IOException {
        return send("GET", path, "");
    }

    public Answer post(String path, String json) throws IOException {
        return with("Content-Type", "application/json").send("POST", path, json);
    }

    public Answer send(String method, String path, String body) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            socket.setSoTimeout(20_000);
            byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
            StringBuilder head = new StringBuilder(method + " " + path + " HTTP/1.1\r\n");
            headers.forEach((name, value) ->
                    head.append(name).append(": ").append(value).append("\r\n"));
            if (bytes.length > 0)
                head.append("Content-Length: ").append(bytes.length).append("\r\n");
            head.append("Connection: close\r\n\r\n");
            socket.getOutputStream().write(head.toString().getBytes(StandardCharsets.UTF_8));
            try {
                socket.getOutputStream().write(bytes);
                socket.getOutputStream().flush();
            } catch (IOException cutOff) {
                // the server has answered before the body was through; the answer is read all the same
            }
            return read(socket.getInputStream());
        }
    }

    private static Answer read(InputStream in) throws IOException {
        String all = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        int end = all.indexOf("\r\n\r\n");
        String head = end < 0 ? all : all.substring(0, end);
        int status = head.startsWith("HTTP/1.1 ") ? Integer.parseInt(head.substring(9, 12)) : 0;
        return new Answer(status, head, end < 0 ? "" : all.substring(end + 4));
    }
}
