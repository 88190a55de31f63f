package galena.build.predict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.pattern.Pattern;
import galena.engine.steady.Accuracy;
import galena.proof.Kind;
import galena.proof.Published;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is read off a static curve: from curves in closed form, and from a build whose carrier dies at its trough. */
class StaticLimitsTest {
    @TempDir
    private Path folder;

    private static AmplitudeCurve curve(DoubleUnaryOperator amplitude) {
        List<Prediction.Point> points = new ArrayList<>();
        for (int k = -60; k <= 60; k++) {
            points.add(new Prediction.Point(k / 60.0, amplitude.applyAsDouble(k / 60.0), 1e6));
        }
        return new AmplitudeCurve(points);
    }

    @Test
    void a_line_that_is_cut_off_on_one_side_is_modulated_deepest_about_a_bias_in_the_middle_of_what_is_left() {
        // linear from −0.5 V on, flat above 0.3 V: the whole line, −0.5 to 0.3 V, is swept about −0.1 V
        AmplitudeCurve curve = curve(v -> Math.max(1e-3, Math.min(v, 0.3) + 0.5));
        AmplitudeCurve.Clean best = curve.bestBias(0.01).orElseThrow();
        assertThat(best.bias()).isCloseTo(-0.1, within(0.05));
        assertThat(best.depth()).isGreaterThan(0.95);
        assertThat(curve.deepestClean(0, 0.01).orElseThrow().depth()).isLessThan(0.75);
    }

    @Test
    void a_square_law_distorts_by_a_quarter_of_its_depth_parameter() {
        double a = 0.5;
        AmplitudeCurve curve = curve(v -> (1 + a * v) * (1 + a * v));
        // (1 + m sin)²: second harmonic m²/2 over fundamental 2m
        Published.source("build", Kind.CLOSED_FORM, "(1 + m sin x)² has a second harmonic of m/4 of its fundamental")
                .matches(
                        "distortion of a square-law modulator, m = 0.4",
                        0.4 / 4,
                        curve.envelope(0, 0.4 / a).distortion(),
                        1e-4);
        double level = curve.levelFor(0.5).orElseThrow();
        assertThat(level).isCloseTo((1 - Math.sqrt(0.5)) / a, within(1e-4));
    }

    @Test
    void a_stage_modulated_in_its_emitter_names_its_audio_its_bias_and_where_it_stops() throws Exception {
        Pattern.write("emitter-modulated", folder);
        Prediction prediction = Predict.of(BuildFolder.open(folder), Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        Prediction.Curve curve = (Prediction.Curve) prediction.modulation();
        StaticLimits limits = curve.limits();
        Figure.Known audio = (Figure.Known) limits.audioForDepth();
        double carrier = 0;
        for (Prediction.Point p : curve.curve()) if (p.audio() == 0) carrier = p.amplitude();
        AmplitudeCurve joined = new AmplitudeCurve(curve.curve());
        double trough = joined.envelope(0, audio.value()).negativePeak();
        assertThat(carrier).isPositive();
        assertThat(trough).isCloseTo(0.8, within(0.01)); // the intent's depth
        Figure.Known biased = (Figure.Known) limits.biasedDepth(), deepest = (Figure.Known) curve.deepestClean();
        assertThat(biased.value()).isGreaterThanOrEqualTo(deepest.value() - 0.02);
        assertThat(((Figure.Known) limits.bestBias()).value()).isFinite();
        List<Double> audioPoints =
                curve.curve().stream().map(Prediction.Point::audio).toList();
        assertThat(audioPoints).isSorted().doesNotHaveDuplicates();
    }
}
