package galena.build.predict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.guard.Guard;
import galena.build.guard.GuardReport;
import galena.build.guard.PartMoves;
import galena.build.source.Edit;
import galena.engine.steady.Accuracy;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A warm answer is the same as a cold one: what is kept between answers is speed, not a figure. */
final class LiveTest {
    /** Twice what the accuracy allows one of them. */
    private static final double SAME_FREQUENCY = 2 * Accuracy.CERTIFIED.frequency();

    /** Derivatives on one mesh and, by adjoint, on the same: only rounding and the difference's step lie between. */
    private static final double SAME_DERIVATIVE = 1e-5;

    @TempDir
    private Path path;

    private BuildFolder folder;

    @BeforeEach
    void open() throws Exception {
        try (InputStream demo = LiveTest.class.getResourceAsStream("/galena/demo/build.yaml")) {
            Files.copy(demo, path.resolve("build.yaml"));
        }
        folder = BuildFolder.open(path);
    }

    private static double carrier(Prediction prediction) {
        return ((Prediction.Oscillation) prediction.running()).carrier().value();
    }

    private Moment at(Live live, Overlay overlay) throws Exception {
        return live.at(folder, overlay, Progress.SILENT);
    }

    @Test
    void follows_a_dial_to_where_a_cold_start_arrives() throws Exception {
        Live live = new Live(Accuracy.CERTIFIED);
        assertThat(at(live, Overlay.NONE).way()).isEqualTo(Live.Way.COLD);
        for (double position : new double[] {0.61, 0.9, 0, 1, 0.35}) {
            Overlay overlay = Overlay.NONE.set("Ct", position).set("Co", 1 - position);
            Moment warm = at(live, overlay), cold = at(new Live(Accuracy.CERTIFIED), overlay);
            assertThat(warm.way()).isNotEqualTo(Live.Way.COLD);
            assertThat(carrier(warm.prediction()) / carrier(cold.prediction())).isCloseTo(1, within(SAME_FREQUENCY));
            assertThat(warm.prediction().judgements())
                    .hasSameSizeAs(cold.prediction().judgements());
            for (int k = 0; k < warm.prediction().judgements().size(); k++)
                assertThat(warm.prediction().judgements().get(k).remark())
                        .isEqualTo(cold.prediction().judgements().get(k).remark());
        }
    }

    @Test
    void agrees_with_the_prediction_that_takes_its_time() throws Exception {
        Overlay overlay = Overlay.NONE.set("Ct", 0.7).atTemperature(40).withSupply(new Overlay.SupplyState(7.2, 1));
        Live live = new Live(Accuracy.CERTIFIED);
        at(live, Overlay.NONE);
        Moment moment = at(live, overlay).withCurve(Progress.SILENT);
        Prediction whole = Predict.of(folder, overlay, Accuracy.CERTIFIED, Progress.SILENT);
        assertThat(carrier(moment.prediction()) / carrier(whole)).isCloseTo(1, within(SAME_FREQUENCY));
        assertThat(moment.prediction().setting()).isEqualTo(whole.setting());
        Prediction.Curve own = (Prediction.Curve) moment.prediction().modulation();
        Prediction.Curve theirs = (Prediction.Curve) whole.modulation();
        assertThat(((Figure.Known) own.distortion()).value())
                .isCloseTo(((Figure.Known) theirs.distortion()).value(), within(1e-3));
        assertThat(moment.traces()).hasSize(2).allSatisfy(t -> assertThat(t.samples())
                .hasSize(192));
        assertThat(own.envelope(96)).hasSize(96);
    }

    @Test
    void follows_an_edited_value_and_starts_cold_where_the_circuit_is_another() throws Exception {
        Live live = new Live(Accuracy.CERTIFIED);
        at(live, Overlay.NONE);
        folder = folder.edit(Edit.change("parts.Cp.capacitor", "120 pF", "100 pF"));
        Moment edited = at(live, Overlay.NONE);
        assertThat(edited.way()).isEqualTo(Live.Way.WARM);
        assertThat(carrier(edited.prediction())).isGreaterThan(1.03e6);
        Files.writeString(
                path.resolve("build.yaml"),
                Files.readString(path.resolve("build.yaml"))
                        .replace("  Cc:  {", "  Cx:  {capacitor: 10 pF, from: tail, to: foot}\n  Cc:  {"));
        folder = BuildFolder.open(path);
        assertThat(at(live, Overlay.NONE).way()).isNotEqualTo(Live.Way.WHOLE);
    }

    @Test
    void trims_to_a_channel_within_reach() throws Exception {
        Live live = new Live(Accuracy.CERTIFIED);
        assertThat(live.trim(999e3, Progress.SILENT)).isEmpty();
        at(live, Overlay.NONE);
        Live.Trimmed there = live.trim(999e3, Progress.SILENT).orElseThrow();
        assertThat(there.part()).isEqualTo("Ct");
        assertThat(carrier(at(live, Overlay.NONE.set("Ct", there.position())).prediction()))
                .isCloseTo(999e3, within(1.0));
        assertThat(live.trim(700e3, Progress.SILENT)).isEmpty();
    }

    @Test
    void leaves_what_does_not_start_to_the_whole_prediction() throws Exception {
        folder = folder.edit(Edit.change("parts.Rs.resistor", "3.3 kΩ", "330 kΩ"));
        Moment silent = at(new Live(Accuracy.CERTIFIED), Overlay.NONE);
        assertThat(silent.way()).isEqualTo(Live.Way.WHOLE);
        assertThat(silent.running()).isEmpty();
        assertThat(silent.curveWasAsked()).isTrue();
    }

    @Test
    void tells_of_one_part_what_the_guard_tells_of_all() throws Exception {
        Running running = Running.of(folder.build(), Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        GuardReport report = Guard.of(folder, Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        PartMoves moves = new PartMoves(running);
        for (String part : List.of("Lt", "Ct", "Rs", "Q1", "La")) {
            for (PartMoves.Move move : moves.of(part)) {
                GuardReport.Moves theirs = report.parts().stream()
                        .filter(p -> p.value().equals(move.what()))
                        .findFirst()
                        .orElseThrow()
                        .perPercent();
                assertThat(move.carrier())
                        .isCloseTo(theirs.carrier(), within(SAME_DERIVATIVE * Math.abs(theirs.carrier()) + 1e-6));
                assertThat(move.output())
                        .isCloseTo(
                                theirs.fixed().output(),
                                within(1e-4 * Math.abs(theirs.fixed().output()) + 1e-9));
            }
        }
        assertThat(moves.heat().carrier())
                .isCloseTo(report.drift().perTenKelvin().carrier(), within(0.5));
        assertThat(moves.supply().orElseThrow().carrier())
                .isCloseTo(
                        report.drift().perVolt().carrier(),
                        within(0.01 * Math.abs(report.drift().perVolt().carrier())));
        assertThat(moves.travel("Ct").carrier()).isCloseTo(100 * report.hertzPerPercent() / 100, within(0.5));
    }
}
