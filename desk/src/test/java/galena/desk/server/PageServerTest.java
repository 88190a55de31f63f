package galena.desk.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Attacks on the server, each as the request that an attacker's page or program would send. */
final class PageServerTest {
    private static final int MOST = 1000;

    private final List<Exception> faults = new CopyOnWriteArrayList<>();
    private final List<String> asked = new CopyOnWriteArrayList<>();
    private PageServer server;

    @BeforeEach
    void start() throws IOException {
        server = PageServer.start(
                0,
                ask -> {
                    asked.add(ask.method() + " " + ask.path());
                    if (ask.path().equals("/fault")) throw new IllegalStateException("a secret of the inside");
                    if (ask.method().equals("POST"))
                        return Reply.plain(200, "taken " + ask.text(MOST).length());
                    return Reply.plain(200, "hello");
                },
                faults::add);
    }

    @AfterEach
    void stop() {
        server.close();
    }

    private String key() {
        return server.address().substring(server.address().indexOf("key=") + 4);
    }

    private String cookie() {
        return "galena-" + server.port() + "=" + key();
    }

    private Wire wire() {
        return Wire.to(server.port());
    }

    @Test
    void lets_in_who_has_the_printed_address() throws IOException {
        Wire.Answer first = wire().get("/?key=" + key());
        assertThat(first.status()).isEqualTo(303);
        assertThat(first.header("Location")).isEqualTo("/");
        assertThat(first.header("Set-Cookie"))
                .contains(cookie())
                .contains("HttpOnly")
                .contains("SameSite=Strict");
        assertThat(wire().own(cookie()).get("/").body()).isEqualTo("hello");
        assertThat(wire().own(cookie()).post("/x", "{}").body()).isEqualTo("taken 2");
    }

    @Test
    void listens_on_the_loopback_address_alone() throws IOException {
        for (NetworkInterface each : Collections.list(NetworkInterface.getNetworkInterfaces())) {
            for (InetAddress address : Collections.list(each.getInetAddresses())) {
                if (address.isLoopbackAddress() || !(address instanceof Inet4Address)) continue;
                try (Socket socket = new Socket()) {
                    socket.connect(new InetSocketAddress(address, server.port()), 500);
                    assertThat(address).as("an address of the network answers").isNull();
                } catch (IOException refused) {
                    assertThat(asked).isEmpty();
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "rebound.example:%d",
                "127.0.0.1",
                "127.0.0.1:1",
                "127.0.0.1.rebound.example:%d",
                "[::1]:%d",
                "galena"
            })
    void answers_to_no_other_host(String host) throws IOException {
        String named = String.format(host, server.port());
        assertThat(wire().own(cookie()).with("Host", named).get("/").status()).isEqualTo(421);
        assertThat(wire().with("Host", named).get("/?key=" + key()).status()).isEqualTo(421);
        assertThat(asked).isEmpty();
    }

    @Test
    void answers_to_no_request_without_a_host() throws IOException {
        assertThat(wire().own(cookie()).with("Host", "").get("/").status()).isIn(400, 421);
        assertThat(asked).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "http://elsewhere.example",
                "null",
                "http://127.0.0.1:1",
                "https://127.0.0.1:%d",
                "http://localhost:%d"
            })
    void does_nothing_for_another_origin(String origin) throws IOException {
        String named = String.format(origin, server.port());
        assertThat(wire().own(cookie()).with("Origin", named).post("/x", "{}").status())
                .isEqualTo(403);
        assertThat(wire().own(cookie()).with("Origin", named).get("/").status()).isEqualTo(403);
        assertThat(asked).isEmpty();
    }

    @Test
    void does_nothing_for_a_change_without_an_origin() throws IOException {
        assertThat(wire().own(cookie()).with("Origin", "").post("/x", "{}").status())
                .isEqualTo(403);
        assertThat(asked).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"cross-site", "same-site"})
    void does_nothing_for_a_request_that_the_browser_calls_foreign(String site) throws IOException {
        assertThat(wire().own(cookie())
                        .with("Origin", "")
                        .with("Sec-Fetch-Site", site)
                        .get("/")
                        .status())
                .isEqualTo(403);
        assertThat(asked).isEmpty();
    }

    @Test
    void does_nothing_without_this_starts_token() throws IOException {
        assertThat(wire().own("x=y").get("/").status()).isEqualTo(403);
        assertThat(wire().own("galena-" + server.port() + "=").get("/").status())
                .isEqualTo(403);
        assertThat(wire().own("galena-" + server.port() + "=" + "A".repeat(43))
                        .get("/")
                        .status())
                .isEqualTo(403);
        assertThat(wire().own("galena-1=" + key()).get("/").status()).isEqualTo(403);
        assertThat(wire().get("/?key=" + "A".repeat(43)).status()).isEqualTo(403);
        assertThat(wire().own("x=y").get("/x?key=" + key()).status())
                .as("the key opens the door only")
                .isEqualTo(403);
        assertThat(asked).isEmpty();
    }

    @Test
    void gives_every_start_another_token() throws IOException {
        try (PageServer other = PageServer.start(0, ask -> Reply.missing(), faults::add)) {
            assertThat(other.address()).doesNotContain(key());
        }
        assertThat(key()).hasSize(43);
    }

    @Test
    void takes_no_body_beyond_its_limit() throws IOException {
        assertThat(wire().own(cookie()).post("/x", "a".repeat(MOST)).status()).isEqualTo(200);
        Wire.Answer refused = wire().own(cookie()).post("/x", "a".repeat(MOST + 1));
        assertThat(refused.status()).isEqualTo(413);
        assertThat(refused.body()).contains("1000 bytes");
        assertThat(wire().own(cookie()).post("/x", "a".repeat(5_000_000)).status())
                .isIn(413, 0);
        assertThat(wire().own(cookie())
                        .with("X-Long", "a".repeat(40_000))
                        .get("/")
                        .status())
                .isEqualTo(431);
    }

    @Test
    void knows_few_methods() throws IOException {
        for (String method : List.of("PUT", "PATCH", "OPTIONS", "TRACE", "CONNECT"))
            assertThat(wire().own(cookie()).send(method, "/", "").status())
                    .as(method)
                    .isGreaterThanOrEqualTo(400);
        assertThat(asked).isEmpty();
    }

    @Test
    void forbids_the_browser_to_load_anything_from_elsewhere() throws IOException {
        for (Wire.Answer answer : List.of(
                wire().own(cookie()).get("/"),
                wire().get("/"),
                wire().own(cookie()).get("/fault"))) {
            assertThat(answer.header("Content-Security-Policy"))
                    .contains("default-src 'none'", "script-src 'self'", "frame-ancestors 'none'")
                    .doesNotContain("unsafe", "http:", "https:", "*");
            assertThat(answer.header("X-Content-Type-Options")).isEqualTo("nosniff");
            assertThat(answer.header("Cache-Control")).isEqualTo("no-store");
            assertThat(answer.header("Access-Control-Allow-Origin")).isEmpty();
            assertThat(answer.header("Server")).isEmpty();
        }
    }

    @Test
    void tells_a_fault_to_its_terminal_and_not_to_the_browser() throws IOException {
        Wire.Answer answer = wire().own(cookie()).get("/fault");
        assertThat(answer.status()).isEqualTo(500);
        assertThat(answer.body()).doesNotContain("secret");
        assertThat(faults).singleElement().satisfies(f -> assertThat(f).hasMessageContaining("secret"));
    }
}
