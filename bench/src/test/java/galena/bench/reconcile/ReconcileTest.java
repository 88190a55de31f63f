package galena.bench.reconcile;

import static org.assertj.core.api.Assertions.assertThat;

import galena.bench.reconcile.Reconciliation.Verdict;
import galena.build.folder.BuildFolder;
import galena.build.folder.LogEntry;
import galena.build.folder.LogEntry.What;
import galena.build.folder.Overlay;
import galena.build.predict.PredictedReadings;
import galena.build.predict.Progress;
import galena.build.readings.ReadingModel;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole of it, on a folder. */
final class ReconcileTest {
    private static final String DAY = "2026-03-08";

    @TempDir
    Path here;

    @Test
    void says_that_there_is_nothing_to_reconcile() throws Exception {
        SyntheticBench bench = new SyntheticBench(here.resolve("demo"));
        Reconciliation found = Reconcile.of(bench.folder, DAY, Progress.SILENT);
        assertThat(found.verdict()).isEqualTo(Verdict.TOO_FEW);
        assertThat(found.words().get(0)).contains("holds no readings");
        assertThat(found.calibration()).isEmpty();
    }

    @Test
    void says_of_a_single_reading_that_it_tells_nothing_apart() throws Exception {
        SyntheticBench bench = new SyntheticBench(here.resolve("demo"));
        List<LogEntry> one = bench.readings().subList(0, 1);
        ReadingModel model = bench.model(one);
        List<LogEntry> log = bench.log(model, one, new double[model.latents().size()], new Random(1))
                .orElseThrow();
        BuildFolder read = bench.folder.note(log);
        Reconciliation found = Reconcile.of(read, DAY, Progress.SILENT);
        assertThat(found.verdict()).isEqualTo(Verdict.TOO_FEW);
        assertThat(found.unknowns()).noneMatch(u -> u.share() < 0.4);
        assertThat(found.words().get(0)).contains("too few");
        assertThat(found.calibration()).isEmpty();
        assertThat(found.next()).isPresent();
    }

    @Test
    void an_accepted_calibration_is_in_every_prediction_and_narrows_it_until_it_is_dropped() throws Exception {
        SyntheticBench bench = new SyntheticBench(here.resolve("demo"));
        List<LogEntry> readings = bench.readings();
        ReadingModel model = bench.model(readings);
        Random random = new Random(1003);
        List<LogEntry> log =
                bench.log(model, readings, bench.truth(model, random), random).orElseThrow();
        BuildFolder read = bench.folder.note(log);
        Reconciliation found = Reconcile.of(read, DAY, Progress.SILENT);
        assertThat(found.verdict()).isEqualTo(Verdict.EXPLAINED);
        assertThat(found.readings()).hasSameSizeAs(log).allMatch(r -> Math.abs(r.errorAfter()) < 4);
        assertThat(found.words().toString()).contains("that explains").contains("next reading");

        BuildFolder accepted = read.accept(found.calibration().orElseThrow(), List.of("of a test"));
        assertThat(accepted.calibration()).isPresent();
        Overlay under = Overlay.NONE.set("Ct", 1).atTemperature(22).withSupply(new Overlay.SupplyState(8.3, 0.5));
        var before = PredictedReadings.at(accepted, under, Optional.empty(), Progress.SILENT);
        var after = PredictedReadings.at(
                accepted, under.withCalibration(accepted.calibration().get()), Optional.empty(), Progress.SILENT);
        double carrier = log.get(10).value().value();
        assertThat(log.get(10).what()).isEqualTo(What.CARRIER);
        var narrow = java.util.Objects.requireNonNull(after.get(What.CARRIER));
        var wide = java.util.Objects.requireNonNull(before.get(What.CARRIER));
        assertThat(narrow.halfWidth()).isLessThan(wide.halfWidth() / 10);
        assertThat(Math.abs(narrow.value() - carrier)).isLessThan(2e-3 * carrier);
        assertThat(accepted.dropCalibration()).isTrue();
        assertThat(BuildFolder.open(accepted.folder()).calibration()).isEmpty();
        assertThat(accepted.dropCalibration()).isFalse();
    }
}
