package galena.bench.measure;

import static org.assertj.core.api.Assertions.assertThat;

import galena.bench.capture.Capture;
import galena.bench.capture.Channel;
import galena.bench.capture.ChannelStatistics;
import galena.bench.capture.Understanding;
import galena.bench.capture.Waveforms;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Whole reports: the instrument's clock and gain err as its limits say, and the stated intervals still hold the truth. */
class ReportCoverageTest {
    private static final int CAPTURES = 200;
    private static final double RATE = 6e6;
    private static final double LIMIT_95 = 1.96;

    private final Map<String, Integer> hits = new TreeMap<>();

    @Test
    void reports_hold_the_truth_as_often_as_they_say() {
        IntStream.rangeClosed(1, CAPTURES)
                .parallel()
                .mapToObj(seed -> measured(new Random(seed)))
                .toList()
                .forEach(this::count);
        System.out.println("reports, covered of " + CAPTURES + ": " + hits);
        assertThat(hits).allSatisfy((key, count) -> assertThat(count).as(key).isBetween(182, 198));
    }

    /** A report, and the truth by the key of the figure. */
    private record Measured(Report report, Map<String, Double> truth) {}

    private static Measured measured(Random random) {
        double carrier = 6e5 + 5e5 * random.nextDouble(),
                depth = 0.3 + 0.5 * random.nextDouble(),
                bend = 0.04 * random.nextDouble();
        double clock = 1 + 50e-6 / LIMIT_95 * random.nextGaussian(), gain = 1 + 0.03 / LIMIT_95 * random.nextGaussian();
        int n = 30_000;
        double[] rf = new double[n], audio = new double[n];
        for (int k = 0; k < n; k++) {
            double t = k / RATE * clock;
            double a = Math.cos(2 * Math.PI * 1000 * t), e = 1 + depth * a - bend * a * a;
            audio[k] = 0.3 * a + 0.002 * random.nextGaussian();
            rf[k] = gain * (e * Math.cos(2 * Math.PI * carrier * t) + 0.01 * random.nextGaussian());
            rf[k] = Math.rint(rf[k] * 64) / 64;
        }
        ChannelStatistics s = new ChannelStatistics(n, -2, 2, 1 / 64.0, 8, 0, 1);
        Waveforms waves = new Waveforms(
                1 / RATE, 0, List.of(new Channel("CH1", "V", rf, s), new Channel("CH2", "V", audio, s)), false, false);
        Expected expected = Expected.nothing().withInstrument(new Instrument(50, 3, 0, -50));
        Report r = Measure.capture(
                new Capture("c", waves, new Understanding("", "", "", 0, n, 0, 0, List.of())), expected);
        double high = 1 + depth - bend, low = 1 - depth - bend;
        double exact = 100 * (high - low) / (high + low);
        return new Measured(
                r,
                Map.of(
                        "carrier.frequency",
                        carrier,
                        "carrier.amplitude",
                        1 - bend / 2,
                        "depth",
                        exact,
                        "depth.trapezoid",
                        exact,
                        "depth.positive",
                        100 * (high / (1 - bend / 2) - 1)));
    }

    private void count(Measured measured) {
        measured.truth.forEach((key, truth) -> {
            Reading reading = measured.report.figure(key).orElseThrow().reading();
            boolean covered =
                    reading instanceof Reading.Known known && known.estimate().covers(truth);
            hits.merge(key, covered ? 1 : 0, Integer::sum);
        });
    }
}
