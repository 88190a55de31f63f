package galena.build.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.build.DemoBuild;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.engine.steady.Accuracy;
import galena.engine.steady.Waveforms;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a test point shows against time. */
class TimePicturesTest {
    @Test
    void the_demo_starts_stands_and_is_modulated_as_its_figures_say(@TempDir Path here) throws Exception {
        BuildFolder folder = DemoBuild.in(here.resolve("demo"));
        Overlay overlay = Overlay.NONE.probing("TP2");
        Running running = Running.of(folder.build(), overlay, Accuracy.LIVE, Progress.SILENT);
        TimePictures pictures = TimePictures.of(running, folder.build().points().get("TP2"), 1000, Progress.SILENT);
        Waveforms w = running.state().waveforms();
        double first = 2 * w.voltageAmplitude("out", "ground", 1);

        double[] v = pictures.carrier().volts();
        double height =
                Arrays.stream(v).max().orElseThrow() - Arrays.stream(v).min().orElseThrow();
        // harmonics move the peaks of the pair's output by little
        assertThat(height).isCloseTo(first, within(0.1 * first));
        assertThat(pictures.carrier().time()[v.length - 1]).isCloseTo(3 / w.frequency(), within(1e-12));

        Strip start = pictures.startup().orElseThrow();
        int last = start.time().length - 1;
        assertThat(start.height(0)).isLessThan(0.1 * height);
        // bias voltages go on settling after the tank has
        assertThat(start.height(last)).isCloseTo(height, within(0.1 * height));
        assertThat(pictures.startupTime().orElseThrow()).isBetween(1e-6, start.time()[last]);

        Strip modulated = pictures.modulated().orElseThrow();
        double most = 0, least = 1e9;
        for (int k = 0; k < modulated.time().length; k++) {
            most = Math.max(most, modulated.height(k));
            least = Math.min(least, modulated.height(k));
        }
        assertThat(most / height).isBetween(1.3, 2.0);
        assertThat(least / height).isBetween(0.2, 0.7);
        assertThat(pictures.cycles()).extracting(Wave::name).containsExactly("crest", "trough");
        assertThat(pictures.without()).isEmpty();
    }
}
