package galena.signal.modulation;

import static org.assertj.core.api.Assertions.assertThat;

import galena.signal.Estimate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Of 200 captures the stated 95 % interval must hold the truth 182 to 198 times, figure by figure: outside that range
 * lies less than 1.5 % of the binomial law for 0.95 on either side.
 */
class CoverageTest {
    private static final int CAPTURES = 200;
    private static final int FEWEST = 182;
    private static final int MOST = 198;

    private final Map<String, List<Double>> widths = new LinkedHashMap<>();
    private final Map<String, Integer> covered = new LinkedHashMap<>();

    @Test
    void stated_intervals_hold_the_truth_as_often_as_they_say() {
        IntStream.rangeClosed(1, CAPTURES)
                .parallel()
                .mapToObj(CoverageTest::measured)
                .toList() // in the order of the seeds, and counted by one thread
                .forEach(this::count);
        StringBuilder report = new StringBuilder("figure: covered of 200, median interval width\n");
        widths.forEach((figure, list) -> {
            Collections.sort(list);
            report.append(String.format("%-28s %3d  %.3g%n", figure, covered.get(figure), list.get(list.size() / 2)));
        });
        System.out.println(report);
        assertThat(covered)
                .allSatisfy((figure, hits) ->
                        assertThat(hits).as("%s%n%s", figure, report).isBetween(FEWEST, MOST));
    }

    private record Measured(SyntheticCapture capture, ModulatedCarrier.Result result) {}

    private static Measured measured(int seed) {
        SyntheticCapture capture = new SyntheticCapture(seed);
        return new Measured(capture, ModulatedCarrier.of(capture.samples(), ModulatedCarrier.Known.nothing()));
    }

    private void count(Measured measured) {
        SyntheticCapture c = measured.capture;
        assertThat(measured.result).isInstanceOf(ModulatedCarrier.Found.class);
        ModulatedCarrier.Found found = (ModulatedCarrier.Found) measured.result;
        Optional<EnvelopeFit> fitted = found.envelope();
        assertThat(fitted).as("the tone of %.0f Hz is recognised", c.tone).isPresent();
        EnvelopeFit e = fitted.get();
        count("carrier frequency, Hz", found.frequency(), c.carrier);
        count("drift, Hz/s", found.drift(), 0);
        count("amplitude over truth", found.amplitude().map(a -> a / c.amplitude), 1);
        count("tone, Hz", e.tone(), c.tone);
        count("positive peak", e.positivePeak(), c.extreme(1) - 1);
        count("negative peak", e.negativePeak(), 1 - c.extreme(-1));
        count("depth", e.depth(), Depth.symmetrical(c.extreme(1), c.extreme(-1)));
        count("audio harmonic 1", e.harmonic(1), c.envelope[0]);
        count("audio harmonic 2", e.relative(2), c.envelope[1] / c.envelope[0]);
        count("audio harmonic 3", e.relative(3), c.envelope[2] / c.envelope[0]);
        count("distortion", e.distortion(), Math.hypot(c.envelope[1], c.envelope[2]) / c.envelope[0]);
        count("swing, Hz", found.swing().orElseThrow(), c.swing);
        Sidebands sidebands = found.sidebands().orElseThrow();
        count("lower sideband", sidebands.lower(), c.sideband(-1));
        count("upper sideband", sidebands.upper(), c.sideband(1));
        count("hum at 100 Hz", found.hum().get(1).ratio(), c.hum);
        count("noise, rms", found.noise().orElseThrow(), c.noiseRms());
        count("carrier harmonic 2", found.harmonics().get(0).ratio(), c.harmonics[0]);
        count("carrier harmonic 3", found.harmonics().get(1).ratio(), c.harmonics[1]);
    }

    private void count(String figure, Estimate found, double truth) {
        widths.computeIfAbsent(figure, f -> new ArrayList<>()).add(found.high() - found.low());
        covered.merge(figure, found.covers(truth) ? 1 : 0, Integer::sum);
    }
}
