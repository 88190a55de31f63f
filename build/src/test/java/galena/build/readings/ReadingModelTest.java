package galena.build.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.build.DemoBuild;
import galena.build.fault.Faults;
import galena.build.folder.Build;
import galena.build.folder.LogEntry.What;
import galena.build.folder.Overlay;
import galena.build.folder.Probe;
import galena.build.folder.TestPoint;
import galena.build.predict.Progress;
import galena.build.readings.ReadingModel.Readings;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class ReadingModelTest {
    private static final double STEP = 2e-3;
    /** Central differences of followed periods: their own error, as a share of the largest slope of the reading. */
    private static final double OF_DIFFERENCES = 2e-3;

    @TempDir
    Path folder;

    private static Situation at(String net, String probe) {
        return new Situation(
                Optional.of(new TestPoint(net, net, "ground", Optional.empty())),
                Probe.known(probe),
                Map.of(),
                OptionalDouble.of(22),
                OptionalDouble.of(8.3),
                0);
    }

    private static List<Asked> asked() {
        Situation source = at("source", "10x");
        return List.of(
                new Asked(What.CARRIER, source),
                new Asked(What.AMPLITUDE, source),
                new Asked(What.VOLTAGE, source),
                new Asked(What.VOLTAGE, at("bias", "meter")),
                new Asked(What.AMPLITUDE, at("bias", "10x")));
    }

    /** Coupled coils too, whose mutual inductance belongs to no part. */
    @Test
    void slopes_are_what_differences_say() throws Exception {
        ReadingModel model = ReadingModel.of(DemoBuild.in(folder).build(), asked(), Progress.SILENT);
        double[] z = new double[model.latents().size()];
        Readings here = model.at(z, Optional.empty(), 0, 5).orElseThrow();
        double[][] slopes = model.slopes(here, z);
        List<String> keys = model.latents().stream().map(Latent::key).toList();
        for (String key : List.of("Lt inductance", "Lt Q", "La inductance", "k(Lt,La) taken", "Cf", "Rb")) {
            int j = keys.indexOf(key);
            if (j < 0)
                j = keys.indexOf(
                        keys.stream().filter(k -> k.startsWith("k")).findFirst().orElseThrow());
            double[] above = moved(model, z, j, STEP, here), below = moved(model, z, j, -STEP, here);
            for (int i = 0; i < 5; i++) {
                double difference = (above[i] - below[i]) / (2 * STEP), largest = 1e-9;
                for (double slope : slopes[i]) largest = Math.max(largest, Math.abs(slope));
                assertThat(slopes[i][j])
                        .as("%s, reading %d", key, i)
                        .isCloseTo(difference, within(OF_DIFFERENCES * largest));
            }
        }
    }

    private static double[] moved(ReadingModel model, double[] z, int number, double by, Readings near) {
        double[] there = z.clone();
        there[number] += by;
        return model.at(there, Optional.of(near), 0, 5).orElseThrow().values();
    }

    /** A meter on a decoupled net is solved without it, and what it draws is added. */
    @Test
    void a_meter_in_passing_reads_what_it_reads_when_solved_with_its_load() throws Exception {
        ReadingModel model = ReadingModel.of(DemoBuild.in(folder).build(), asked(), Progress.SILENT);
        double[] z = new double[model.latents().size()];
        for (int j = 0; j < z.length; j++) z[j] = 0.4 * Math.sin(j);
        double[] passing = model.at(z, Optional.empty(), 0, 5).orElseThrow().values();
        double[] exact = model.exact(z, 0, 5).orElseThrow().values();
        assertThat(passing[3]).isCloseTo(exact[3], within(1e-4));
        assertThat(passing[4]).isCloseTo(exact[4], within(1e-3));
    }

    @Test
    void a_dead_device_leaves_the_circuit_at_rest_with_voltages_and_no_carrier() throws Exception {
        Build build = DemoBuild.in(folder).build();
        ReadingModel dead = ReadingModel.of(build, asked(), Progress.SILENT)
                .changed(Faults.of(build, Overlay.NONE).stream()
                        .filter(f -> f.words().equals("Q1 dead: no channel"))
                        .findFirst()
                        .orElseThrow()::in);
        double[] z = new double[dead.latents().size()];
        assertThat(dead.at(z, Optional.empty(), 0, 1)).isEmpty();
        Readings rest = dead.at(z, Optional.empty(), 1, 5).orElseThrow();
        assertThat(dead.asked().get(1).shown(rest.values()[0])).isZero();
        assertThat(rest.values()[1]).isCloseTo(0, within(1e-2)); // the source, with nothing to feed it
        int rb = dead.latents().stream().map(Latent::key).toList().indexOf("Rb");
        double[] above = z.clone();
        above[rb] += STEP;
        double moved = dead.at(above, Optional.of(rest), 1, 5).orElseThrow().values()[2] - rest.values()[2];
        assertThat(dead.slopes(rest, z)[2][rb]).isCloseTo(moved / STEP, within(2e-2 * Math.abs(moved / STEP)));
    }

    @Test
    void amplitudes_by_one_instrument_share_its_gain() throws Exception {
        List<Asked> asked = new ArrayList<>();
        for (String net : List.of("source", "out"))
            asked.add(new Asked(What.AMPLITUDE, at(net, "10x"), 1e-2, Optional.of("a scope"), 0.015));
        ReadingModel model = ReadingModel.of(DemoBuild.in(folder).build(), asked, Progress.SILENT);
        int gain = model.latents().size() - 1;
        assertThat(model.latents().get(gain).key()).isEqualTo("gain of a scope");
        double[] z = new double[gain + 1];
        Readings right = model.at(z, Optional.empty(), 0, 2).orElseThrow();
        z[gain] = 2;
        Readings high = model.at(z, Optional.of(right), 0, 2).orElseThrow();
        for (int k = 0; k < 2; k++) {
            assertThat(asked.get(k).shown(high.values()[k]) / asked.get(k).shown(right.values()[k]))
                    .isCloseTo(1.03, within(1e-9));
            assertThat(model.slopes(right, new double[gain + 1])[k][gain]).isCloseTo(0.015, within(1e-4));
        }
    }
}
