package galena.desk.command;

import static galena.desk.Shape.valid;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import galena.desk.LaidDemo;
import galena.desk.Screen;
import galena.desk.console.ExitCode;
import galena.signal.audio.InventedProgramme;
import galena.signal.audio.WavSink;
import galena.signal.audio.WavSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Listening to the demo build, and its pictures in time, as a builder runs them. */
final class ListenCommandsTest {
    @TempDir
    Path here;

    private Path build;
    private final Screen screen = new Screen();

    @BeforeEach
    void layTheDemo() throws IOException {
        build = LaidDemo.in(here.resolve("demo"));
    }

    /** Two seconds of the invented programme at a low rate. */
    private Path recording() throws IOException {
        Path file = here.resolve("in.wav");
        double[] left = new double[32_000], right = left.clone();
        new InventedProgramme(16_000).read(left, right, left.length);
        try (WavSink sink = new WavSink(file, 2, 16_000, 24)) {
            sink.write(left, right, left.length);
            sink.finish();
        }
        return file;
    }

    @Test
    void a_recording_is_heard_and_its_figures_are_told() throws IOException {
        Path out = here.resolve("out.wav");
        assertThat(screen.run("listen", build, recording(), out, "--distance", "2 m", "--mistuned", "1 kHz"))
                .isZero();
        assertThat(screen.answers())
                .contains("heard on a transistor set", "Hearing: turn the volume down", "2.0 s of programme")
                .contains("What the listener gets", "signal-to-noise, loud passages", "−3 dB point")
                .contains("What happened on the way", "overmodulation", "How far to trust it", "depth, full")
                .contains("1.00 kHz beside the carrier")
                .doesNotContain("NaN", "null", "Optional", "E-");
        assertThat(screen.answers().lines().mapToInt(String::length).max().orElseThrow())
                .isLessThanOrEqualTo(100);
        try (WavSource source = WavSource.open(out)) {
            assertThat(source.rate()).isEqualTo(16_000);
            assertThat(source.channels()).isEqualTo(1);
            assertThat(source.length()).isEqualTo(32_000);
            double[] l = new double[32_000], r = l.clone();
            double most = 0;
            for (int n = source.read(l, r, l.length); n > 0; n = source.read(l, r, l.length))
                for (int k = 0; k < n; k++) most = Math.max(most, Math.abs(l[k]));
            assertThat(most).isBetween(0.1, 0.9);
        }
        Screen again = new Screen();
        assertThat(again.run("listen", build, here.resolve("in.wav"), out)).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(again.remarks()).contains("exists already", "--replace");
    }

    @Test
    void everything_is_there_as_json_and_the_invented_programme_needs_no_recording() throws IOException {
        Path out = here.resolve("demo.wav");
        assertThat(screen.run("listen", build, "--demo", out, "--json", "--receiver", "table", "--no-noise"))
                .isZero();
        JsonNode json = valid("listen.json", screen.answers());
        assertThat(json.path("seconds").asDouble()).isEqualTo(24);
        assertThat(json.path("timesRealTime").asDouble()).isPositive();
        assertThat(json.path("without").asText()).contains("left out as asked");
        assertThat(json.path("agreement")).hasSizeGreaterThanOrEqualTo(3);
        assertThat(out).exists();
    }

    @Test
    void what_cannot_be_heard_is_refused_with_a_remedy() throws IOException {
        Path notes = Files.writeString(here.resolve("notes.wav"), "do re mi");
        assertThat(screen.run("listen", build, notes, here.resolve("o.wav"))).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.remarks()).contains("notes.wav", "A plain WAV is read");
        Screen odd = new Screen();
        assertThat(odd.run("listen", build, notes, "--receiver", "telly", "--bits", "8"))
                .isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(odd.remarks()).contains("telly", "rod, table, crystal", "8 bits", "IN.wav OUT.wav");
        assertThat(here.resolve("o.wav")).doesNotExist();
    }

    @Test
    void a_test_point_is_pictured_through_its_probe() throws IOException {
        assertThat(screen.run("picture", build, "--point", "TP2")).isZero();
        assertThat(screen.answers())
                .contains("TP2 at out", "through a 10x probe", "peak to peak", "kicked by a millivolt", "nine tenths")
                .contains("crest", "trough", "Start at TP2", "Modulated at TP2")
                .doesNotContain("NaN", "null", "Optional");
        for (String name : new String[] {"startup", "carrier", "modulated", "cycles"})
            assertThat(build.resolve("packet/picture-TP2-" + name + ".svg"))
                    .content()
                    .startsWith("<svg ")
                    .endsWith("</svg>\n");
        Screen json = new Screen();
        assertThat(json.run("picture", build, "--json")).isZero();
        JsonNode tree = valid("pictures.json", json.answers());
        assertThat(tree.path("point").asText()).isEqualTo("TP2");
        Screen wrong = new Screen();
        assertThat(wrong.run("picture", build, "--point", "TP9")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(wrong.remarks()).contains("TP1, TP2");
    }
}
