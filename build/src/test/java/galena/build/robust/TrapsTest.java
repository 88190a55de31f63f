package galena.build.robust;

import static org.assertj.core.api.Assertions.assertThat;

import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.folder.Builds;
import galena.build.folder.Layout;
import galena.build.folder.Overlay;
import galena.build.pattern.Corners;
import galena.build.pattern.Pattern;
import galena.build.predict.Predict;
import galena.build.predict.Prediction;
import galena.build.predict.Progress;
import galena.build.source.BadInputException;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.equations.Evaluation;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Battery;
import galena.engine.part.Capacitor;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What circuits of this kind do that a quick look at them would not expect, and what has misled programs before. */
class TrapsTest {
    @TempDir
    private Path folder;

    private record Running(Startup startup, SteadyState.Found state) {
        Waveforms waves() {
            return state.waveforms();
        }
    }

    private static Circuit circuit(String pattern) throws BadInputException {
        return Corners.circuit(Builds.read(Pattern.named(pattern).text()), Overlay.NONE, Corners.Devices.TYPICAL);
    }

    private static Running run(Circuit circuit) {
        OperatingPoint point = OperatingPointLadder.climb(Equations.of(circuit));
        assertThat(point).isInstanceOf(OperatingPoint.Found.class);
        Startup startup = Startup.readiest((OperatingPoint.Found) point).orElseThrow();
        SteadyState state = new SteadyOscillation(Accuracy.CERTIFIED).solve((OperatingPoint.Found) point, startup);
        assertThat(state).isInstanceOf(SteadyState.Found.class);
        return new Running(startup, (SteadyState.Found) state);
    }

    @Test
    void a_driven_oscillator_runs_several_percent_below_where_it_starts() throws Exception {
        for (String pattern : new String[] {"bipolar-colpitts", "emitter-modulated", "supply-modulated"}) {
            Running running = run(circuit(pattern));
            double starts = running.startup().mode().frequency();
            assertThat(running.waves().frequency()).as(pattern).isBetween(0.75 * starts, 0.97 * starts);
        }
    }

    /**
     * A source resistor of 1 kΩ, as many are built: the drain swings until junction and reversed channel stop it. The pattern's
     * own resistor starves the stage so that it does so less.
     */
    @Test
    void the_tank_takes_the_drain_below_ground_in_every_cycle() throws Exception {
        String text = Pattern.named("grounded-gate-colpitts").text();
        String driven = text.replace("Rs:  {resistor: 2.2 kΩ", "Rs:  {resistor: 1 kΩ");
        assertThat(driven).isNotEqualTo(text);
        Waveforms waves = run(Corners.circuit(Builds.read(driven), Overlay.NONE, Corners.Devices.TYPICAL))
                .waves();
        Equations equations = waves.equations();
        int drain = equations.net("drain"), source = equations.net("source");
        assertThat(waves.range(drain, 0)[0]).isLessThan(-0.3);
        assertThat(waves.range(drain, source)[0]).isLessThan(-0.3);
        assertThat(waves.powerImbalance()).isLessThan(Accuracy.CERTIFIED.powerImbalance());
    }

    @Test
    void gate_conduction_a_thousand_times_faster_than_the_carrier_is_followed_to_certified_accuracy() throws Exception {
        Circuit hartley = circuit("gate-leak-hartley");
        Running running = run(hartley);
        Waveforms waves = running.waves();
        Equations equations = waves.equations();
        int gate = equations.net("gate");
        double coupling = ((Capacitor) hartley.part("Cg").orElseThrow()).capacitance();
        Evaluation at = equations.newEvaluation();
        double fastest = Double.POSITIVE_INFINITY;
        int entry = equations.entry(gate, gate);
        for (int k = 0; k < 2000; k++) {
            equations.evaluate(waves.at(k / 2000.0), 0, at);
            fastest = Math.min(fastest, (at.c[entry] - coupling) / at.g[entry]);
        }
        assertThat(fastest).as("junction capacitance over conductance, s").isLessThan(1e-3 / waves.frequency());
        assertThat(running.state().error().frequency()).isLessThan(Accuracy.CERTIFIED.frequency());
    }

    /** Without its decoupling the rail keeps only strays: an ohm into ten picofarads beside a carrier of a microsecond. */
    @Test
    void battery_ohms_into_picofarads_are_no_obstacle() throws Exception {
        Circuit circuit = circuit("bipolar-colpitts");
        Battery battery = (Battery) circuit.part("supply").orElseThrow();
        Circuit bare = circuit.with(new Capacitor("Cb", "rail", "ground", 10e-12));
        assertThat(battery.internalResistance() * 10e-12).isLessThan(20e-12);
        Running with = run(circuit), without = run(bare);
        assertThat(without.state().error().frequency()).isLessThan(Accuracy.CERTIFIED.frequency());
        assertThat(without.waves().frequency() / with.waves().frequency()).isBetween(0.999, 1.001);
    }

    /** The output's tank damped so little that the pair's collector runs into its base. */
    @Test
    void a_saturated_pair_modulates_shallow_and_distorted_and_the_judgement_says_so() throws Exception {
        String text = Pattern.named("grounded-gate-colpitts").text();
        String saturated = text.replace("Ro:  {resistor: 5.6 kΩ", "Ro:  {resistor: 100 kΩ");
        assertThat(saturated).isNotEqualTo(text);
        Files.writeString(Layout.BUILD.in(folder), saturated);
        Prediction prediction = Predict.of(BuildFolder.open(folder), Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        Prediction.Curve curve = (Prediction.Curve) prediction.modulation();
        Figure.Known positive = (Figure.Known) curve.positivePeak(), distortion = (Figure.Known) curve.distortion();
        assertThat(positive.value()).as("positive peak").isLessThan(0.6);
        assertThat(distortion.value()).as("distortion").isGreaterThan(curve.cleanLimit());
        assertThat(prediction.judgements())
                .filteredOn(j -> j.item().equals("modulation"))
                .extracting(Prediction.Judgement::outcome)
                .containsExactly(Prediction.Outcome.FAILS);
    }

    @Test
    void a_modulated_oscillator_moves_in_frequency_with_the_audio() throws Exception {
        Pattern.write("supply-modulated", folder);
        Prediction prediction = Predict.of(BuildFolder.open(folder), Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        Prediction.Curve curve = (Prediction.Curve) prediction.modulation();
        double lowest = curve.curve().stream()
                .mapToDouble(Prediction.Point::frequency)
                .min()
                .orElseThrow();
        double highest = curve.curve().stream()
                .mapToDouble(Prediction.Point::frequency)
                .max()
                .orElseThrow();
        assertThat(highest - lowest).isGreaterThan(1000);
        assertThat(((Figure.Known) curve.swing()).value()).isBetween(500.0, highest - lowest);
    }
}
