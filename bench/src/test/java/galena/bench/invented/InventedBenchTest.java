package galena.bench.invented;

import static org.assertj.core.api.Assertions.assertThat;

import galena.bench.log.Beside;
import galena.bench.measure.Report;
import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.folder.LogEntry;
import galena.build.folder.LogEntry.What;
import galena.build.folder.Overlay;
import galena.build.predict.Predict;
import galena.build.predict.PredictedReadings;
import galena.build.predict.Prediction;
import galena.build.predict.Progress;
import galena.engine.steady.Accuracy;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The demo's bench says that it is invented, is the same every time, and its measures find what was put into it. */
class InventedBenchTest {
    private static BuildFolder demo(Path folder) throws Exception {
        try (InputStream in = BuildFolder.class.getResourceAsStream("/galena/demo/build.yaml")) {
            Files.createDirectories(folder);
            Files.copy(in, Layout.BUILD.in(folder));
        }
        return BuildFolder.open(folder);
    }

    private static Map<String, String> files(Path bench) throws Exception {
        Map<String, String> files = new TreeMap<>();
        try (Stream<Path> all = Files.list(bench)) {
            for (Path file : all.toList()) files.put(file.getFileName().toString(), Files.readString(file));
        }
        return files;
    }

    @Test
    void it_is_marked_small_the_same_every_time_and_measured_right(@TempDir Path here) throws Exception {
        BuildFolder one = demo(here.resolve("one"));
        List<Report> reports = InventedBench.lay(one, Progress.SILENT);
        InventedBench.lay(demo(here.resolve("two")), Progress.SILENT);
        Map<String, String> files = files(Layout.BENCH.in(one.folder()));
        assertThat(files).hasSize(4).isEqualTo(files(here.resolve("two/bench")));
        assertThat(files.values())
                .allSatisfy(text -> assertThat(text.substring(0, 80)).contains("invented"));
        assertThat(files.values().stream().mapToInt(String::length).sum()).isLessThan(400_000);
        BuildFolder laid = BuildFolder.open(one.folder());
        assertThat(laid.log()).allSatisfy(InventedBenchTest::isMarked);
        assertThat(reports).allSatisfy(r -> assertThat(r.verdict()).contains("A carrier at 97"));

        double truth = PredictedReadings.carrier(PredictedReadings.running(
                one.build(),
                Truth.over(one.build()),
                Optional.of(one.build().points().get("TP2")),
                Progress.SILENT));
        LogEntry carrier = laid.log().get(0);
        assertThat(carrier.what()).isEqualTo(What.CARRIER);
        // the level is audio-driven, which shifts the mean carrier a little; the scope's clock is 14 ppm off
        assertThat(carrier.value().value()).isBetween(truth * (1 - 60e-6), truth * (1 + 60e-6));

        Prediction prediction = Predict.of(laid, Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        List<Beside> beside = Beside.of(laid, prediction, Progress.SILENT);
        assertThat(beside).hasSameSizeAs(laid.log());
        // all that was invented lies within tolerances and sheets but for the strays, which are small
        assertThat(beside.stream().filter(b -> b.agrees().isPresent()))
                .hasSizeGreaterThan(6)
                .allMatch(b -> b.agrees().equals(Optional.of(true)));
        assertThat(beside.stream().filter(b -> b.reading().what() == What.NEGATIVE_PEAK))
                .allSatisfy(b -> assertThat(b.predicted().text()).doesNotContain("not known"));
    }

    private static void isMarked(LogEntry reading) {
        assertThat(reading.how().orElse("")
                        + reading.circumstances().instrument().orElse("")
                        + reading.circumstances().capture().orElse(""))
                .contains("invented");
    }
}
