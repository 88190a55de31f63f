package galena.bench.reconcile;

import static org.assertj.core.api.Assertions.assertThat;

import galena.build.folder.LogEntry;
import galena.build.readings.Latent;
import galena.build.readings.ReadingModel;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Intervals against hidden truths: how often the stated 95 % hold what the copy was really built with. */
final class CoverageTest {
    private static final double NORMAL_WIDTH = 2 * 1.959963984540054;
    /** Of an unknown's interval: at most this share of the old one is left where it is found. */
    private static final double FOUND = 0.7;

    @TempDir
    Path here;

    /**
     * What some copies came to, by latent.
     *
     * @param inside how many intervals held the truth
     * @param widths of the intervals, as shares of what they were before any reading
     */
    private record Count(List<Latent> latents, int copies, int[] inside, double[][] widths) {
        double median(int latent) {
            double[] sorted = widths[latent].clone();
            Arrays.sort(sorted);
            return sorted[copies / 2];
        }

        boolean isFound(int latent) {
            return latents.get(latent).kind() != Latent.Kind.CIRCUMSTANCE && median(latent) <= FOUND;
        }
    }

    private Count count(int copies) throws Exception {
        SyntheticBench bench = new SyntheticBench(here.resolve("demo"));
        List<LogEntry> readings = bench.readings();
        ReadingModel model = bench.model(readings);
        int latents = model.latents().size();
        Count count = new Count(model.latents(), copies, new int[latents], new double[latents][copies]);
        for (int copy = 0; copy < copies; copy++) {
            Random random = new Random(900_000 + copy);
            double[] truth = bench.truth(model, random);
            Optional<List<LogEntry>> log = bench.log(model, readings, truth, random);
            while (log.isEmpty()) {
                truth = bench.truth(model, random);
                log = bench.log(model, readings, truth, random);
            }
            List<Observation> observed = SyntheticBench.observed(model, log.get());
            List<Fit> fits = Modes.of(
                    model,
                    observed,
                    Fit.point(model, new double[latents], observed.size()).orElseThrow());
            double[][] left = Remaining.of(model, fits, copy);
            for (int j = 0; j < latents; j++) {
                int latent = j;
                double[] sorted =
                        Arrays.stream(left).mapToDouble(z -> z[latent]).sorted().toArray();
                double low = Explanations.at(sorted, 0.025), high = Explanations.at(sorted, 0.975);
                if (truth[j] >= low && truth[j] <= high) count.inside[j]++;
                count.widths[j][copy] = (high - low) / NORMAL_WIDTH;
            }
        }
        return count;
    }

    /** Few copies, all unknowns together: 5 × 47 intervals; each copy's are not independent of one another. */
    @Test
    void intervals_hold_the_truth_of_a_few_copies() throws Exception {
        Count count = count(5);
        int inside = 0, all = 0, found = 0;
        for (int j = 0; j < count.latents.size(); j++) {
            if (count.latents.get(j).kind() == Latent.Kind.CIRCUMSTANCE) continue;
            inside += count.inside[j];
            all += count.copies;
            if (count.isFound(j)) found++;
        }
        assertThat((double) inside / all).isBetween(0.88, 0.99);
        assertThat(found).isBetween(4, 20);
    }

    /** 95 % of 200, give or take 2.6 standard deviations of the count, for each unknown that the readings find. */
    @Test
    @Tag("long")
    void intervals_hold_the_truth_of_two_hundred_copies_unknown_by_unknown() throws Exception {
        Count count = count(200);
        for (int j = 0; j < count.latents.size(); j++) {
            if (!count.isFound(j)) continue;
            System.Logger log = System.getLogger("coverage");
            log.log(
                    System.Logger.Level.INFO,
                    "{0}: {1} of 200, median width {2} of the old one",
                    count.latents.get(j).shown(),
                    count.inside[j],
                    count.median(j));
            assertThat(count.inside[j]).as(count.latents.get(j).shown()).isBetween(182, 198);
        }
    }
}
