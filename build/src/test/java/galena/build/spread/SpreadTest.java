package galena.build.spread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import galena.build.DemoBuild;
import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.predict.Predict;
import galena.build.predict.Prediction;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.spread.Drawn.Quantity;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Trimmer;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.proof.Kind;
import galena.proof.Published;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Copies of the demo build, drawn, solved and counted. */
final class SpreadTest {
    /** The demo as it is set: 25 °C and a full battery. */
    private static final Conditions AS_SET = new Conditions(25, 25, 1);

    /**
     * Of a window's width, where predict's ends may lie apart from the drawn ones: an end of 95 % is known to a tenth of the half
     * width from 300 copies, and independent contributions are added as if normal.
     */
    private static final double BAND = 0.15;

    /** The same for what is far from even about its middle, as the current in an output coil near its resonance. */
    private static final double SKEWED_BAND = 0.3;

    @TempDir
    static Path here;

    private static BuildFolder demo;
    private static SpreadReport set;

    @BeforeAll
    static void draw() throws Exception {
        demo = DemoBuild.in(here.resolve("demo"));
        set = Spread.of(demo, Overlay.NONE, AS_SET, 300, 7, Progress.SILENT);
    }

    @Test
    void the_same_seed_draws_the_same_copies_whatever_the_count_and_another_seed_others() throws Exception {
        SpreadReport few = Spread.of(demo, Overlay.NONE, Conditions.FULL, 12, 1, Progress.SILENT);
        SpreadReport again = Spread.of(demo, Overlay.NONE, Conditions.FULL, 12, 1, Progress.SILENT);
        SpreadReport other = Spread.of(demo, Overlay.NONE, Conditions.FULL, 12, 2, Progress.SILENT);
        assertThat(again.windows()).isEqualTo(few.windows());
        assertThat(other.windows()).isNotEqualTo(few.windows());
        Drawn back = Spread.one(demo, Overlay.NONE, Conditions.FULL, 1, 5, Progress.SILENT);
        double[] carriers = few.histograms().getOrDefault(Quantity.AS_SET, new double[0]);
        assertThat(carriers).hasSize(12).contains(back.values().get(Quantity.AS_SET));
        assertThat(back.number()).isEqualTo(5);
    }

    /** The fast way through kept arrays against each copy's own cold solve at the position that it was trimmed to. */
    @Test
    void a_copy_is_what_solving_it_from_cold_says() throws Exception {
        Running typical = Running.of(demo.build(), Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        Sampler sampler = new Sampler(typical, Conditions.FULL, typical.strongestTrimmer(), Progress.SILENT);
        for (int number = 0; number < 8; number++) {
            Drawn drawn = Spread.one(demo, Overlay.NONE, Conditions.FULL, 3, number, Progress.SILENT);
            Circuit circuit = sampler.circuit(drawn.numbers(), drawn.temperature(), drawn.charge());
            SteadyState.Found asSet = cold(circuit);
            assertThat(drawn.values().get(Quantity.AS_SET))
                    .isCloseTo(asSet.waveforms().frequency(), within(3.0));
            Trimmer trimmer = (Trimmer) circuit.part("Ct").orElseThrow();
            SteadyState.Found trimmed =
                    cold(circuit.with(trimmer.at(drawn.values().get(Quantity.TRIM))));
            assertThat(trimmed.waveforms().frequency()).isCloseTo(999e3, within(3.0));
            double output = trimmed.waveforms().currentAmplitude("La", 1);
            assertThat(drawn.values().get(Quantity.OUTPUT)).isCloseTo(output, within(2e-3 * output));
            double second = 20 * Math.log10(trimmed.waveforms().currentAmplitude("La", 2) / output);
            assertThat(drawn.values().get(Quantity.HARMONIC)).isCloseTo(second, within(0.1));
            assertThat(drawn.voltages().get("source"))
                    .isCloseTo(trimmed.waveforms().meanVoltage("source"), within(1e-3));
        }
    }

    private static SteadyState.Found cold(Circuit circuit) {
        var point = (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
        return (SteadyState.Found) new SteadyOscillation(Accuracy.CERTIFIED)
                .solve(point, Startup.readiest(point).orElseThrow());
    }

    /** At 25 °C with a full battery, what predict says of one copy and what the copies show are the same. */
    @Test
    void the_intervals_that_predict_prints_are_those_of_the_drawn_copies() throws Exception {
        Prediction prediction = Predict.of(demo, Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        Prediction.Oscillation running = (Prediction.Oscillation) prediction.running();
        same(running.carrier(), set.windows().get(Quantity.AS_SET), BAND);
        same(running.supplyCurrent(), set.windows().get(Quantity.SUPPLY), BAND);
        same(prediction.startup().orElseThrow().margin(), set.windows().get(Quantity.MARGIN), BAND);
        Prediction.Spectrum output = running.spectra().stream()
                .filter(s -> s.quantity().equals("current in La"))
                .findFirst()
                .orElseThrow();
        same(output.fundamental(), set.windows().get(Quantity.OUTPUT), SKEWED_BAND);
        for (Figure mean : running.meanVoltages()) {
            Figure.Known known = (Figure.Known) mean;
            Figure.Known drawn = set.voltages().get(known.at());
            if (drawn.high() - drawn.low() > 1e-3) same(known, drawn, BAND);
        }
    }

    private static void same(Figure predicted, Figure.Known drawn, double band) {
        Figure.Known known = (Figure.Known) predicted;
        double allowed = band * (drawn.high() - drawn.low());
        assertThat(known.low())
                .as("low end of %s %s", known.quantity(), known.at())
                .isCloseTo(drawn.low(), within(allowed));
        assertThat(known.high())
                .as("high end of %s %s", known.quantity(), known.at())
                .isCloseTo(drawn.high(), within(allowed));
    }

    /** 19 of 20: the interval of E. B. Wilson (1927), from its closed form. */
    @Test
    void a_yield_has_wilsons_interval() {
        List<Drawn> drawn = java.util.stream.IntStream.range(0, 20)
                .mapToObj(k -> new Drawn(
                        k,
                        25,
                        1,
                        java.util.Map.of(),
                        java.util.Map.of(),
                        k == 0 ? List.of("fails") : List.of(),
                        new double[0]))
                .toList();
        Figure.Known yield = Spread.share(drawn);
        assertThat(yield.value()).isEqualTo(0.95);
        Published.source(
                        "build",
                        Kind.CLOSED_FORM,
                        "E. B. Wilson, J. Am. Stat. Assoc. 22 (1927) 209: (p + z²/2n ± z√(p(1−p)/n + z²/4n²)) / (1 + z²/n),"
                                + " evaluated by hand for 19 of 20 and z = 1.96")
                .matches("low end of a yield of 19 in 20", 0.7639, yield.low(), 1e-4)
                .matches("high end of a yield of 19 in 20", 0.9911, yield.high(), 1e-4);
    }

    @Test
    void what_the_intent_asks_is_what_fails(@TempDir Path other) throws Exception {
        SpreadReport strict = Spread.of(
                DemoBuild.in(other, "carrier: 999 kHz", "carrier: 1044 kHz"),
                Overlay.NONE,
                Conditions.FULL,
                60,
                1,
                Progress.SILENT);
        assertThat(strict.failures()).containsKey("Ct does not reach the channel");
        assertThat(strict.yield().value())
                .isEqualTo(1 - strict.failures().get("Ct does not reach the channel") / 60.0, within(1e-12));
        assertThat(strict.yield().low()).isLessThan(strict.yield().value());
        assertThat(strict.worst().get(0).isGood()).isFalse();
        Drawn back = Spread.one(
                DemoBuild.in(other, "carrier: 999 kHz", "carrier: 1044 kHz"),
                Overlay.NONE,
                Conditions.FULL,
                1,
                strict.worst().get(0).number(),
                Progress.SILENT);
        assertThat(back.failures()).isEqualTo(strict.worst().get(0).failures());
        assertThat(back.values()).isEqualTo(strict.worst().get(0).values());
    }

    /** Halving the tolerance in the file gives the yield that halving it in the model promised. */
    @Test
    void the_tolerance_to_tighten_first_buys_what_it_promises(@TempDir Path other) throws Exception {
        String carrier = "carrier: 999 kHz", high = "carrier: 1052 kHz";
        SpreadReport loose = Spread.of(
                DemoBuild.in(other.resolve("loose"), carrier, high),
                Overlay.NONE,
                Conditions.FULL,
                400,
                1,
                Progress.SILENT);
        SpreadReport.Tighten first = loose.tighten().get(0);
        assertThat(first.what()).isEqualTo("Lt inductance ±5 %");
        assertThat(first.yield()).isGreaterThan(loose.yield().value() + 0.02);
        SpreadReport tight = Spread.of(
                DemoBuild.in(
                        other.resolve("tight"),
                        carrier,
                        high,
                        "tolerance: 5 %, tempco: 50 ppm/K, from: orail",
                        "tolerance: 2.5 %, tempco: 50 ppm/K, from: orail"),
                Overlay.NONE,
                Conditions.FULL,
                400,
                1,
                Progress.SILENT);
        assertThat(tight.yield().value()).isCloseTo(first.yield(), within(0.02));
        // a Q does not tune: halving what is not known of it buys no channel
        assertThat(loose.tighten())
                .noneMatch(t ->
                        t.what().startsWith("Lt Q") && t.yield() > loose.yield().value() + 0.02);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, -1})
    void nothing_is_drawn_of_none(int count) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Spread.of(demo, Overlay.NONE, AS_SET, count, 1, Progress.SILENT));
    }

    @Test
    void conditions_are_ranges() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Conditions(30, 20, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Conditions(20, 30, 1.1));
    }

    @Test
    void it_stops_when_told_to() {
        AtomicInteger asked = new AtomicInteger();
        Progress impatient = new Progress() {
            @Override
            public void at(double share, String doing) {
                // only asked whether to stop
            }

            @Override
            public boolean cancelled() {
                return asked.incrementAndGet() > 100;
            }
        };
        assertThatExceptionOfType(CancellationException.class)
                .isThrownBy(() -> Spread.of(demo, Overlay.NONE, Conditions.FULL, 100_000, 1, impatient));
    }
}
