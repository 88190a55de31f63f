package galena.build.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import galena.build.DemoBuild;
import galena.build.drift.DriftReport.Moment;
import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.engine.steady.Accuracy;
import galena.trade.battery.Battery;
import galena.trade.battery.BatteryLookup;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The demo build from switch-on. */
final class DriftTest {
    private static final double HOUR = 3600;

    @TempDir
    static Path here;

    private static BuildFolder demo;
    private static DriftReport still;

    @BeforeAll
    static void run() throws Exception {
        demo = DemoBuild.in(here.resolve("demo"));
        still = Drift.of(demo, Overlay.NONE, Warming.none(25), Drift.CHANNEL, Progress.SILENT);
    }

    private static Battery battery() {
        return ((BatteryLookup.Known) Battery.named("6xAA-NiMH")).battery();
    }

    private static double frequency(Overlay overlay) throws Exception {
        return Running.of(demo.build(), overlay, Accuracy.CERTIFIED, Progress.SILENT)
                .state()
                .waveforms()
                .frequency();
    }

    /** What flows out over the run is what the battery held: the integral of the current is its capacity at those currents. */
    @Test
    void the_charge_that_flows_is_the_charge_that_was_there() {
        List<Moment> run = still.run();
        double coulombs = 0;
        for (int k = 1; k < run.size(); k++) {
            Moment a = run.get(k - 1), b = run.get(k);
            coulombs += (b.seconds() - a.seconds()) * (a.supply() + b.supply()) / 2;
        }
        double capacity = battery().capacity(1.35e-3).typical();
        assertThat(coulombs).isCloseTo(capacity, within(0.01 * capacity));
        assertThat(run.get(0).charge()).isEqualTo(1);
        assertThat(run.get(run.size() - 1).charge()).isCloseTo(0, within(1e-12));
        assertThat(run.stream().map(Moment::seconds).toList()).isSorted();
    }

    @ParameterizedTest
    @ValueSource(ints = {5, 20, 33})
    void a_moment_is_the_build_on_that_battery(int k) throws Exception {
        Moment m = still.run().get(k);
        double emf = battery().emf(m.charge()), ohms = battery().resistance(m.charge());
        double there = frequency(Overlay.NONE.withSupply(new Overlay.SupplyState(emf, ohms)));
        assertThat(m.frequency() - still.carrier()).isCloseTo(there - frequency(Overlay.NONE), within(2.0));
        assertThat(m.terminals()).isCloseTo(emf - ohms * m.supply(), within(1e-6));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-10, 0, 50})
    void a_temperature_is_the_build_at_it(double celsius) throws Exception {
        Moment m = still.temperatures().stream()
                .filter(t -> t.celsius() == celsius)
                .findFirst()
                .orElseThrow();
        double there = frequency(Overlay.NONE.atTemperature(celsius));
        assertThat(m.frequency() - still.carrier()).isCloseTo(there - frequency(Overlay.NONE), within(2.0));
    }

    @Test
    void the_supply_pushes_as_two_solved_supplies_differ() throws Exception {
        double emf = battery().emf(1), ohms = battery().resistance(1);
        double more = frequency(Overlay.NONE.withSupply(new Overlay.SupplyState(emf + 0.1, ohms)));
        double less = frequency(Overlay.NONE.withSupply(new Overlay.SupplyState(emf - 0.1, ohms)));
        assertThat(still.pushing()).isCloseTo(5 * (more - less), within(2.0));
    }

    @Test
    void a_narrower_channel_is_left_sooner_at_the_moment_the_curve_crosses_it() throws Exception {
        DriftReport narrow = Drift.of(demo, Overlay.NONE, Warming.none(25), 100, Progress.SILENT);
        Figure.Known hours = (Figure.Known) narrow.leaves();
        assertThat(hours.low()).isLessThan(hours.value());
        assertThat(hours.high()).isGreaterThan(hours.value());
        Moment before = null;
        for (Moment m : narrow.run()) {
            if (Math.abs(m.frequency() - narrow.carrier()) > 100) {
                assertThat(before).isNotNull();
                assertThat(hours.value()).isBetween(before.seconds(), m.seconds());
                return;
            }
            before = m;
        }
        throw new AssertionError("never left");
    }

    /** Warming by ten degrees in an hour: after ten hours what a warmer room does, and the battery's own little beside. */
    @Test
    void warming_moves_it_as_temperature_does() throws Exception {
        DriftReport warmed = Drift.of(demo, Overlay.NONE, new Warming(0, 20, HOUR), Drift.CHANNEL, Progress.SILENT);
        Moment later = warmed.run().stream()
                .filter(m -> m.seconds() > 8 * HOUR)
                .findFirst()
                .orElseThrow();
        assertThat(later.celsius()).isCloseTo(20, within(0.1));
        double ohms = battery().resistance(later.charge()), emf = battery().emf(later.charge());
        Overlay there = Overlay.NONE.atTemperature(later.celsius()).withSupply(new Overlay.SupplyState(emf, ohms));
        double difference = frequency(there) - frequency(Overlay.NONE.atTemperature(0));
        assertThat(later.frequency() - warmed.carrier()).isCloseTo(difference, within(3.0));
    }

    @Test
    void a_starved_oscillator_is_said_to_stop(@TempDir Path other) throws Exception {
        BuildFolder starved = DemoBuild.in(other, "Rd:  {resistor: 100 Ω", "Rd:  {resistor: 5.6 kΩ");
        DriftReport report = Drift.of(starved, Overlay.NONE, Warming.none(25), Drift.CHANNEL, Progress.SILENT);
        Figure.Known stops = (Figure.Known) report.stops(), leaves = (Figure.Known) report.leaves();
        Moment last = report.run().get(report.run().size() - 1);
        assertThat(stops.value()).isEqualTo(last.seconds());
        assertThat(leaves.value()).isLessThan(stops.value());
        // once running it holds on a little longer than it would start
        assertThat(runs(starved, last.charge() + 0.1)).isTrue();
        assertThat(runs(starved, last.charge() - 0.01)).isFalse();
    }

    private static boolean runs(BuildFolder folder, double charge) throws Exception {
        try {
            Overlay there = Overlay.NONE.withSupply(
                    new Overlay.SupplyState(battery().emf(charge), battery().resistance(charge)));
            Running.of(folder.build(), there, Accuracy.LIVE, Progress.SILENT);
            return true;
        } catch (Running.NotRunning stopped) {
            return false;
        }
    }

    @Test
    void on_a_supply_that_does_not_empty_only_warmth_moves_it(@TempDir Path other) throws Exception {
        BuildFolder mains =
                DemoBuild.in(other, "supply: {battery: 6xAA-NiMH}", "supply: {voltage: 8 V, resistance: 1 Ω}");
        DriftReport report = Drift.of(mains, Overlay.NONE, new Warming(15, 35, HOUR), Drift.CHANNEL, Progress.SILENT);
        assertThat(report.spent()).isInstanceOf(Figure.Missing.class);
        Moment last = report.run().get(report.run().size() - 1);
        assertThat(last.seconds()).isEqualTo(24 * HOUR);
        assertThat(last.celsius()).isCloseTo(35, within(1e-6));
        assertThat(last.frequency()).isNotCloseTo(report.carrier(), within(10.0));
    }

    @Test
    void depth_is_set_once_and_then_left() {
        assertThat(still.wanted()).contains(0.8);
        assertThat(still.run().get(0).depth().orElseThrow()).isCloseTo(0.8, within(0.005));
        assertThat(still.loses()).isInstanceOf(Figure.Known.class);
        double hours = ((Figure.Known) still.loses()).value() / HOUR;
        Moment after = still.run().stream()
                .filter(m -> m.seconds() / HOUR > hours)
                .findFirst()
                .orElseThrow();
        assertThat(after.depth().orElse(0.0) < 0.72 || after.distortion().orElse(1.0) > 0.05)
                .isTrue();
    }

    @Test
    void a_channel_and_a_time_constant_are_above_zero() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Drift.of(demo, Overlay.NONE, Warming.none(25), 0, Progress.SILENT));
        assertThatIllegalArgumentException().isThrownBy(() -> new Warming(20, 30, 0));
    }
}
