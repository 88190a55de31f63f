package galena.build.propose;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;

/** Why a part of a pattern stands where it stands, in words. */
final class Reasons {
    private static final String FILE = "/galena/propose/reasons.properties";

    private final Properties words = new Properties();

    Reasons() {
        try (Reader in = new InputStreamReader(
                Objects.requireNonNull(Reasons.class.getResourceAsStream(FILE), FILE), StandardCharsets.UTF_8)) {
            words.load(in);
        } catch (IOException damaged) {
            throw new UncheckedIOException(FILE + " can't be read", damaged);
        }
    }

    /** Of a part of a pattern; empty for parts that no pattern has. */
    Optional<String> of(String pattern, String part) {
        return Optional.ofNullable(words.getProperty(pattern + "/" + part))
                .or(() -> Optional.ofNullable(words.getProperty(part)));
    }
}
