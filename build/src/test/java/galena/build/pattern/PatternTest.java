package galena.build.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import galena.build.figure.Figure;
import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.folder.PartEntry;
import galena.build.predict.Coverage;
import galena.build.predict.Predict;
import galena.build.predict.Prediction;
import galena.build.predict.Progress;
import galena.build.source.BadInputException;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PatternTest {
    private static final double HARMONICS = -30;
    private static final double DEPTH = 0.8;

    /** At the programme's own level, with the preset as drawn: most of the wanted depth, and clean. */
    private static final double DEPTH_AS_SET = 0.7;

    private static final double CLEAN = 0.05;

    @TempDir
    private Path folder;

    static Stream<String> names() {
        return Pattern.all().stream().map(Pattern::name);
    }

    private BuildFolder written(String name) throws BadInputException, IOException {
        Pattern.write(name, folder.resolve(name));
        return BuildFolder.open(folder.resolve(name));
    }

    @ParameterizedTest
    @MethodSource("names")
    void a_pattern_does_what_it_promises(String name) throws Exception {
        BuildFolder build = written(name);
        Prediction prediction = Predict.of(build, Overlay.NONE, Accuracy.CERTIFIED, Progress.SILENT);

        assertThat(prediction.notes()).isEmpty();
        assertThat(known(prediction.startup().orElseThrow().weakest()).value()).isPositive();
        assertThat(prediction.judgements())
                .extracting(Prediction.Judgement::item)
                .contains("starts by itself", "carrier", "harmonics", "runtime", "modulation");
        assertThat(prediction.judgements())
                .allSatisfy(j -> assertThat(j.outcome()).as(j.toString()).isEqualTo(Prediction.Outcome.MEETS));
        assertThat(strongestHarmonic(build.build(), prediction)).isLessThanOrEqualTo(HARMONICS);
        Prediction.Curve curve = (Prediction.Curve) prediction.modulation();
        assertThat(known(curve.deepestClean()).value()).isGreaterThanOrEqualTo(DEPTH);
        assertThat(known(curve.negativePeak()).value()).isGreaterThanOrEqualTo(DEPTH_AS_SET);
        assertThat(known(curve.distortion()).value()).isLessThanOrEqualTo(CLEAN);
    }

    /** At the unfavourable end of its interval, in the aerial's current. */
    private static double strongestHarmonic(Build build, Prediction prediction) {
        String aerial = build.parts().values().stream()
                .filter(p -> p.kind().isAerial())
                .map(PartEntry::name)
                .findFirst()
                .orElseThrow();
        return ((Prediction.Oscillation) prediction.running())
                .spectra().stream()
                        .filter(s -> s.part().equals(aerial) && s.quantity().startsWith("current"))
                        .flatMap(s -> s.harmonics().stream())
                        .filter(Figure.Known.class::isInstance)
                        .mapToDouble(h -> known(h).high())
                        .max()
                        .orElseThrow();
    }

    private static Figure.Known known(Figure figure) {
        assertThat(figure).isInstanceOf(Figure.Known.class);
        return (Figure.Known) figure;
    }

    @ParameterizedTest
    @MethodSource("names")
    void a_pattern_starts_and_runs_hot_and_cold_fresh_and_flat_with_weak_and_strong_devices(String name)
            throws Exception {
        BuildFolder build = written(name);
        double wanted = build.build().intent().carrier().orElseThrow().value();
        Coverage coverage = Coverage.sweep(build, Overlay.NONE, "Ct", 1, Accuracy.LIVE, Progress.SILENT);
        double reach = Math.min(wanted - coverage.lowest(), coverage.highest() - wanted);
        for (double celsius : new double[] {-10, 50}) {
            for (double charge : new double[] {1, 0}) {
                for (Corners.Devices devices : List.of(Corners.Devices.WEAK, Corners.Devices.STRONG)) {
                    double carrier = carrier(build.build(), celsius, charge, devices);
                    assertThat(Math.abs(carrier - wanted))
                            .as("%s at %s °C, charge %s, %s devices", name, celsius, charge, devices)
                            .isLessThan(reach);
                }
            }
        }
    }

    private static double carrier(Build build, double celsius, double charge, Corners.Devices devices)
            throws BadInputException {
        Equations equations = Equations.of(Corners.circuit(build, Corners.overlay(build, celsius, charge), devices));
        String corner = build.name() + " at " + celsius + " °C, charge " + charge + ", " + devices;
        OperatingPoint point = OperatingPointLadder.climb(equations);
        assertThat(point).as(corner).isInstanceOf(OperatingPoint.Found.class);
        Startup startup = Startup.readiest((OperatingPoint.Found) point).orElseThrow();
        assertThat(startup.margin()).as(corner).isPositive();
        SteadyState state = new SteadyOscillation(Accuracy.LIVE).solve((OperatingPoint.Found) point, startup);
        assertThat(state).as(corner).isInstanceOf(SteadyState.Found.class);
        return ((SteadyState.Found) state).waveforms().frequency();
    }

    @ParameterizedTest
    @MethodSource("names")
    void every_value_of_a_pattern_stands_in_a_commented_file(String name) throws Exception {
        Pattern pattern = Pattern.named(name);
        assertThat(pattern.summary()).isNotBlank().doesNotContain("\n");
        assertThat(pattern.text()).startsWith("galena: 1\n").contains("intent:", "supply:", "points:");
        assertThat(pattern.text().lines().filter(line -> line.contains("#")).count())
                .as("lines with a reason")
                .isGreaterThan(15);
    }

    @Test
    void an_unknown_pattern_is_refused_with_the_nearest() {
        assertThatThrownBy(() -> Pattern.write("clap", folder.resolve("new")))
                .isInstanceOf(BadInputException.class)
                .hasMessageContaining("no pattern is named \"clap\"")
                .hasMessageContaining("Nearest: clapp");
        assertThat(folder.resolve("new")).doesNotExist();
    }

    @Test
    void nothing_is_overwritten() throws Exception {
        Path old = folder.resolve("build.yaml");
        Files.writeString(old, "mine");
        assertThatThrownBy(() -> Pattern.write("clapp", folder))
                .isInstanceOf(BadInputException.class)
                .hasMessageContaining("has a build.yaml already");
        assertThat(old).hasContent("mine");

        Path calibrated = Files.createDirectory(folder.resolve("calibrated"));
        Files.writeString(calibrated.resolve("calibration.yaml"), "of another build");
        assertThatThrownBy(() -> Pattern.write("clapp", calibrated)).hasMessageContaining("calibration.yaml");
        assertThatThrownBy(() -> Pattern.write("clapp", old)).hasMessageContaining("is a file");
    }
}
