package galena.desk.console;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class TerminalTest {
    private final ByteArrayOutputStream answers = new ByteArrayOutputStream();
    private final ByteArrayOutputStream remarks = new ByteArrayOutputStream();

    private Terminal terminal(Charset charset, boolean colour) {
        return new Terminal(
                new PrintStream(answers, false, charset),
                new PrintStream(remarks, true, charset),
                charset,
                colour,
                true,
                80);
    }

    @Test
    void spells_signs_that_an_ascii_screen_lacks() {
        terminal(StandardCharsets.US_ASCII, false).print("180 µH, 4.7 kΩ, −41 dBc ±0.3, 25 °C → 999 kHz");
        assertThat(answers.toString(StandardCharsets.US_ASCII).strip())
                .isEqualTo("180 uH, 4.7 kohm, -41 dBc +-0.3, 25 deg C -> 999 kHz");
    }

    @Test
    void leaves_what_the_screen_can_show() {
        terminal(Charset.forName("IBM850"), false).print("180 µH, 85 Ω");
        assertThat(answers.toString(Charset.forName("IBM850")).strip()).isEqualTo("180 µH, 85 ohm");
    }

    @Test
    void sends_documents_as_utf8_whatever_the_screen() {
        terminal(StandardCharsets.US_ASCII, false).printDocument("{\"unit\": \"Ω\"}");
        assertThat(answers.toString(StandardCharsets.UTF_8)).isEqualTo("{\"unit\": \"Ω\"}");
    }

    @Test
    void colours_only_where_it_may() {
        assertThat(terminal(StandardCharsets.UTF_8, false).tone(Terminal.Tone.GOOD, "meets"))
                .isEqualTo("meets");
        assertThat(terminal(StandardCharsets.UTF_8, true).tone(Terminal.Tone.GOOD, "meets"))
                .isEqualTo("\u001b[32mmeets\u001b[0m");
        Optional<Charset> console = Optional.of(StandardCharsets.UTF_8);
        assertThat(Terminal.ofProcess(Map.of(), console).colours()).isTrue();
        assertThat(Terminal.ofProcess(Map.of("NO_COLOR", "1"), console).colours())
                .isFalse();
        assertThat(Terminal.ofProcess(Map.of("TERM", "dumb"), console).colours())
                .isFalse();
        assertThat(Terminal.ofProcess(Map.of(), Optional.empty()).colours()).isFalse();
    }

    @ParameterizedTest
    @CsvSource({
        "LC_ALL, C, US-ASCII",
        "LANG, POSIX, US-ASCII",
        "LANG, de_DE.UTF-8, UTF-8",
        "LC_CTYPE, en_GB.utf8, UTF-8",
        "LANG, de_DE.ISO-8859-15@euro, ISO-8859-15",
        "LANG, de_DE, ISO-8859-1",
        "LANG, xx.no-such-set, ISO-8859-1",
    })
    void believes_the_locale(String variable, String value, String expected) {
        assertThat(Terminal.charset(Map.of(variable, value), StandardCharsets.ISO_8859_1))
                .isEqualTo(Charset.forName(expected));
    }

    @Test
    void progress_is_shown_late_and_seldom_and_wiped() {
        long[] now = {0};
        try (ProgressLine line = new ProgressLine(terminal(StandardCharsets.UTF_8, false), () -> now[0])) {
            line.at(0.1, "covering");
            assertThat(remarks.size()).isZero();
            now[0] = 2_000_000_000L;
            line.at(0.25, "covering");
            line.at(0.26, "covering");
        }
        assertThat(remarks.toString(StandardCharsets.UTF_8))
                .isEqualTo("\r\u001b[Kcovering: 25 %, 6 s left (Ctrl-C stops)\r\u001b[K");
    }
}
