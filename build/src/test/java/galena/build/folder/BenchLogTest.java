package galena.build.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Readings are added to a log, and what the builder wrote in it stays as it is. */
class BenchLogTest {
    @TempDir
    Path folder;

    private Path log;

    @BeforeEach
    void lay() throws Exception {
        Files.writeString(folder.resolve("build.yaml"), Builds.STAGE);
        log = Layout.LOG.in(folder);
    }

    private static LogEntry carrier(String value, Circumstances circumstances) throws Exception {
        return new LogEntry(
                LogEntry.What.CARRIER,
                Quantity.read(value, Unit.HERTZ),
                Optional.of(Quantity.read("50 Hz", Unit.HERTZ)),
                Optional.of("TP1"),
                Optional.of("2026-03-07 19:30"),
                Optional.of("phase slope; \"noise\" alone: ±2 Hz # and so on"),
                circumstances,
                new Place(Layout.LOG.place(), 1, 1));
    }

    private static Circumstances noted() throws Exception {
        return new Circumstances(
                Optional.of("scope: 8 bit"),
                Optional.of("10x"),
                Map.of("Ct", Quantity.read("40 %", Unit.FRACTION)),
                Optional.of(Quantity.read("22 °C", Unit.KELVIN)),
                Optional.of(Quantity.read("8.9 V", Unit.VOLT)),
                Optional.of(Quantity.read("200 mV", Unit.VOLT)),
                Optional.of("cap one.csv"));
    }

    @Test
    void a_log_is_begun_and_reads_back_as_it_was_noted() throws Exception {
        BuildFolder open =
                BuildFolder.open(folder).note(List.of(carrier("987.2 kHz", noted()), carrier("988 kHz", noted())));
        assertThat(open.log()).hasSize(2);
        LogEntry first = open.log().get(0);
        assertThat(first.value().value()).isEqualTo(987.2e3);
        assertThat(first.uncertainty().orElseThrow().value()).isEqualTo(50);
        assertThat(first.how()).contains("phase slope; \"noise\" alone: ±2 Hz # and so on");
        assertThat(first.circumstances()).isEqualTo(noted());
        assertThat(Files.readString(log)).startsWith("galena: 1\nreadings:\n  - {carrier: 987.2 kHz, ");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "galena: 1   # mine\nreadings:   # by hand\n  - {carrier: 1 MHz, at: TP1}   # the first\n  # no more yet\n",
                "galena: 1\r\nreadings:\r\n- {carrier: 1 MHz, at: TP1}\r\n",
                "galena: 1\nreadings:\n  - {carrier: 1 MHz, at: TP1}",
                "galena: 1\nreadings:\n  - carrier: 1 MHz\n    how: |\n      a long story\n",
                "galena: 1\nreadings: [{carrier: 1 MHz}]\n",
                "readings:\n    - {voltage: 3 V}\ngalena: 1\n",
            })
    void what_stands_in_a_log_stays(String text) throws Exception {
        Files.createDirectories(log.getParent());
        Files.write(log, text.getBytes(StandardCharsets.UTF_8));
        BuildFolder open = BuildFolder.open(folder).note(List.of(carrier("987.2 kHz", noted())));
        assertThat(open.log()).hasSize(2);
        assertThat(open.log().get(1).value().text()).isEqualTo("987.2 kHz");
        String after = Files.readString(log);
        int kept = 0; // every character of the old text is there, in its order
        for (int k = 0; k < after.length() && kept < text.length(); k++)
            if (after.charAt(k) == text.charAt(kept)) kept++;
        assertThat(kept).isEqualTo(text.length());
        assertThat(after.lines().filter(l -> l.contains("987.2"))).hasSize(1);
    }

    @Test
    void a_reading_that_does_not_fit_the_build_is_refused_and_nothing_is_written() throws Exception {
        Circumstances wrong = new Circumstances(
                Optional.empty(),
                Optional.empty(),
                Map.of("Cx", Quantity.read("40 %", Unit.FRACTION)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        BuildFolder open = BuildFolder.open(folder);
        LogEntry reading = carrier("1 MHz", wrong);
        BadInputException bad = catchThrowableOfType(BadInputException.class, () -> open.note(List.of(reading)));
        assertThat(bad.problems().get(0).found()).isEqualTo("the build has no adjustment \"Cx\"");
        assertThat(log).doesNotExist();
    }
}
