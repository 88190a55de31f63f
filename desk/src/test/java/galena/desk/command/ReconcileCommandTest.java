package galena.desk.command;

import static galena.desk.Shape.valid;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import galena.bench.invented.InventedBench;
import galena.build.folder.BuildFolder;
import galena.build.predict.Progress;
import galena.desk.LaidDemo;
import galena.desk.Screen;
import galena.desk.console.ExitCode;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Reconcile on the demo's invented bench, as a builder runs it. */
final class ReconcileCommandTest {
    @TempDir
    Path here;

    private Path build;

    @BeforeEach
    void layTheDemo() throws Exception {
        build = LaidDemo.in(here.resolve("demo"));
    }

    @Test
    void says_when_there_is_nothing_to_reconcile() {
        Screen screen = new Screen();
        assertThat(screen.run("reconcile", build.toString())).isEqualTo(ExitCode.NO_ANSWER.number());
        assertThat(screen.answers()).contains("holds no readings yet");
        assertThat(screen.run("reconcile", build.toString(), "--drop")).isEqualTo(ExitCode.NO_ANSWER.number());
        assertThat(screen.run("reconcile", build.toString(), "--drop", "--accept"))
                .isEqualTo(ExitCode.BAD_INPUT.number());
    }

    @Test
    void explains_the_invented_bench_in_words_first_and_keeps_what_is_accepted() throws Exception {
        InventedBench.lay(BuildFolder.open(build), Progress.SILENT);
        Screen page = new Screen();
        assertThat(page.run("reconcile", build.toString(), "--accept")).isZero();
        assertThat(page.answers())
                .contains("What the readings say together", "that explains", "next reading", "Readings", "Unknowns")
                .doesNotContain("NaN", "null", "Optional");
        assertThat(page.answers().lines().mapToInt(String::length).max().orElseThrow())
                .isLessThanOrEqualTo(100);
        assertThat(build.resolve("calibration.yaml")).exists();

        Screen predicted = new Screen();
        assertThat(predicted.run("predict", build.toString(), "--live")).isZero();
        assertThat(predicted.answers()).contains("calibration accepted on");

        Screen json = new Screen();
        json.run("reconcile", build.toString(), "--json");
        JsonNode tree = valid("reconciliation.json", json.answers());
        assertThat(tree.get("verdict").asText()).isEqualTo("explained");
        assertThat(tree.get("readings")).hasSize(11);

        Screen dropped = new Screen();
        assertThat(dropped.run("reconcile", build.toString(), "--drop")).isZero();
        assertThat(build.resolve("calibration.yaml")).doesNotExist();
    }
}
