package galena.desk.server;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Decides who may ask. A page of somebody else's can make the builder's browser send requests here, by this address or by a name that
 * it has made to point here; so a request must name this host, come from this origin, and bear a token that only the address printed
 * at the start gives, kept in a cookie that is never sent from elsewhere. Immutable.
 */
public final class Gate {
    private static final int TOKEN_BYTES = 32;
    private static final Set<String> READING = Set.of("GET", "HEAD");
    private static final Set<String> OWN_SITES = Set.of("same-origin", "none");

    private final String token;
    private final int port;

    private Gate(String token, int port) {
        this.token = token;
        this.port = port;
    }

    /** A gate with a token of its own. */
    static String newToken() {
        byte[] bytes = new byte[TOKEN_BYTES];
        new SecureRandom().nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    static Gate of(String token, int port) {
        return new Gate(token, port);
    }

    /** The headers that matter; each empty where the request has none. */
    record Headers(Optional<String> host, Optional<String> origin, Optional<String> site, Optional<String> cookie) {}

    /** Why somebody is turned away. */
    enum Refusal {
        HOST(421, "This server answers to its own address only."),
        ORIGIN(403, "This request comes from another page."),
        TOKEN(403, "Open the address that galena open printed: it bears the token of this start."),
        METHOD(405, "Only GET, POST and DELETE are answered.");

        private final int status;
        private final String words;

        Refusal(int status, String words) {
            this.status = status;
            this.words = words;
        }

        int status() {
            return status;
        }

        String words() {
            return words;
        }
    }

    /**
     * @param key the token in the address, which the first visit bears instead of the cookie
     * @return empty when the request may be answered
     */
    Optional<Refusal> refuse(String method, Headers headers, Optional<String> key) {
        if (!headers.host().map(this::isOwnHost).orElse(false)) return Optional.of(Refusal.HOST);
        if (!Set.of("GET", "HEAD", "POST", "DELETE").contains(method)) return Optional.of(Refusal.METHOD);
        if (key.isPresent() && READING.contains(method))
            return isToken(key.get()) ? Optional.empty() : Optional.of(Refusal.TOKEN);
        if (headers.origin().isPresent()
                && !headers.origin().get().equals("http://" + headers.host().orElseThrow()))
            return Optional.of(Refusal.ORIGIN);
        if (headers.site().isPresent() && !OWN_SITES.contains(headers.site().get())) return Optional.of(Refusal.ORIGIN);
        // a browser names the origin of whatever changes something
        if (!READING.contains(method) && headers.origin().isEmpty()) return Optional.of(Refusal.ORIGIN);
        return headers.cookie().map(this::hasToken).orElse(false) ? Optional.empty() : Optional.of(Refusal.TOKEN);
    }

    private boolean isOwnHost(String host) {
        String name = host.toLowerCase(Locale.ROOT);
        return name.equals("127.0.0.1:" + port) || name.equals("localhost:" + port);
    }

    private boolean hasToken(String cookies) {
        for (String cookie : cookies.split(";")) {
            int equals = cookie.indexOf('=');
            if (equals > 0
                    && cookie.substring(0, equals).strip().equals(cookieName())
                    && isToken(cookie.substring(equals + 1).strip())) return true;
        }
        return false;
    }

    private boolean isToken(String given) {
        return MessageDigest.isEqual(given.getBytes(StandardCharsets.UTF_8), token.getBytes(StandardCharsets.UTF_8));
    }

    /** Ports share cookies, so the name bears the port: two builds open at once keep out of each other's way. */
    private String cookieName() {
        return "galena-" + port;
    }

    String cookie() {
        return cookieName() + "=" + token + "; Path=/; HttpOnly; SameSite=Strict";
    }
}
