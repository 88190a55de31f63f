package galena.engine.startup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.engine.Circuits;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.CurrentSource;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Part;
import galena.engine.part.Polarity;
import galena.engine.part.Resistor;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.proof.Kind;
import galena.proof.Published;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class StartupTest {
    private static final double VT = 1.380649e-23 * 298.15 / 1.602176634e-19;

    private static OperatingPoint.Found point(Circuit circuit) {
        return (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
    }

    /** Two ideal transistors at one tail, cross-connected through a tank: a conductance of −I/4V_T across it. */
    private static Circuit negativeResistance(double tail, double conductance, double l, double c) {
        Bipolar.Model ideal =
                new Bipolar.Model(1e-15, 1e9, 1e9, Double.POSITIVE_INFINITY, 0, 0, 0, 0.7, 0.5, 0, 0.7, 0.5, 0);
        return Circuit.of(
                new VoltageSource("V", "rail", "ground", new Wave.Direct(5)),
                new Coil("L", "rail", "tank", l, 0, 0, 0),
                new Capacitor("C", "rail", "tank", c),
                new Resistor("R", "rail", "tank", 1 / conductance),
                new Bipolar("Q1", Polarity.N, "rail", "tank", "tail", ideal),
                new Bipolar("Q2", Polarity.N, "tank", "rail", "tail", ideal),
                new CurrentSource("I", "tail", "ground", new Wave.Direct(tail)));
    }

    /** λ = (g − G)/2C ± j√(1/LC − ((g − G)/2C)²) with g = I/4V_T: exact, since the tail follows without delay. */
    @ParameterizedTest
    @ValueSource(doubles = {0.1e-3, 0.3e-3, 0.6e-3})
    void a_tank_with_negative_resistance_grows_at_the_rate_of_the_closed_form(double tail) {
        double l = 50e-6, c = 500e-12, loss = 2e-3, g = tail / (4 * VT);
        Startup startup =
                Startup.readiest(point(negativeResistance(tail, loss, l, c))).orElseThrow();
        double growth = (g - loss) / (2 * c), angular = Math.sqrt(1 / (l * c) - growth * growth);
        Published.source(
                        "engine",
                        Kind.CLOSED_FORM,
                        "negative-resistance oscillator: B. van der Pol, Phil. Mag. 3 (1927) 65, linear part; pair's conductance −I/4V_T")
                .matches(
                        "growth, share of ω, tail " + tail + " A",
                        growth / angular,
                        startup.mode().growth() / angular,
                        1e-7)
                .matchesRelative(
                        "frequency, Hz", angular / (2 * Math.PI), startup.mode().frequency(), 1e-7)
                .matches("conductance it could carry, S", g - loss, startup.extraConductance(), 1e-7 * loss)
                .matchesRelative("loss, S", loss, startup.lossConductance(), 1e-5)
                .matches("margin", g / loss - 1, startup.margin(), 1e-5);
        assertThat(startup.grows()).isEqualTo(g > loss);
        assertThat(startup.site().part()).isEqualTo("L");
        if (startup.grows()) {
            assertThat(startup.timeToGrow(1e-6, 1))
                    .isCloseTo(Math.log(1e6) / growth, within(1e-5 * Math.log(1e6) / growth));
        } else {
            assertThat(startup.timeToGrow(1e-6, 1)).isInfinite();
        }
    }

    /** The transconductance is turned up by the bias until the mode neither grows nor dies. */
    @ParameterizedTest
    @CsvFileSource(resources = "/published/colpitts-start.csv", numLinesToSkip = 1, encoding = "UTF-8")
    void a_common_gate_colpitts_needs_the_transconductance_of_its_determinant(
            double n, double gp, double gm, double frequency) {
        double low = 0.5 * gm, high = 2 * gm;
        for (int k = 0; k < 60; k++) {
            double middle = (low + high) / 2;
            if (colpitts(n, gp, middle).grows()) high = middle;
            else low = middle;
        }
        Published.source(
                        "engine",
                        Kind.CLOSED_FORM,
                        "K. K. Clarke and D. T. Hess, Communication Circuits (1971), ch. 6: determinant of the tapped-capacitor oscillator")
                .matchesRelative("transconductance at zero growth, S, n " + n, gm, high, 1e-7)
                .matchesRelative(
                        "frequency there, Hz, n " + n,
                        frequency,
                        colpitts(n, gp, high).mode().frequency(),
                        1e-6);
    }

    private static Startup colpitts(double n, double gp, double gm) {
        double idss = 10e-3, pinchOff = -3, series = 250e-12;
        double bias = gm * pinchOff * (gm * pinchOff) / (4 * idss); // gm = 2 √(I_DSS I)/|V_P|
        Junction gate = Junction.silicon(1e-20, 1, 0, 0.8, 0.5, 0).withLeakage(0);
        return Startup.readiest(point(Circuit.of(
                        new VoltageSource("V", "rail", "ground", new Wave.Direct(9)),
                        new Coil("L", "rail", "drain", 100e-6, 0, 0, 0),
                        new Resistor("Rp", "rail", "drain", 1 / gp),
                        new Capacitor("C1", "drain", "source", series / (1 - n)),
                        new Capacitor("C2", "source", "ground", series / n),
                        new CurrentSource("I", "source", "ground", new Wave.Direct(bias)),
                        new Jfet(
                                "Q",
                                Polarity.N,
                                "drain",
                                "ground",
                                "source",
                                new Jfet.Model(idss, pinchOff, 0, gate, gate)))))
                .orElseThrow();
    }

    static Stream<Circuit> oscillators() {
        return Stream.of(
                Circuits.groundedGateColpitts(),
                Circuits.gateLeakHartley(),
                Circuits.bipolarColpitts(),
                Circuits.transmitter());
    }

    /** The margin put into the circuit as a resistor must stop the growth. */
    @ParameterizedTest
    @MethodSource("oscillators")
    void the_margin_taken_as_a_real_resistor_just_stops_the_growth(Circuit circuit) {
        Startup startup = Startup.readiest(point(circuit)).orElseThrow();
        assertThat(startup.margin()).as("all of these start").isPositive();
        List<String> nets = circuit.part(startup.site().part()).orElseThrow().nets();
        Part stop = new Resistor("stopper", nets.get(0), nets.get(1), 1 / startup.extraConductance());
        Startup stopped = Startup.readiest(point(circuit.plus(stop))).orElseThrow();
        // the resistor also takes a little of the coil's direct current, which moves the operating point
        assertThat(stopped.mode().growth())
                .isCloseTo(0, within(1e-5 * startup.mode().growth()));
    }

    /** Losses and feeds balance what the mode's energy gains: shares of losses sum to one, the feed exceeds them by the growth. */
    @ParameterizedTest
    @MethodSource("oscillators")
    void shares_of_the_loss_sum_to_one_and_the_transistor_feeds(Circuit circuit) {
        Startup startup = Startup.readiest(point(circuit)).orElseThrow();
        double losses = startup.shares().values().stream()
                .filter(s -> s > 0)
                .mapToDouble(s -> s)
                .sum();
        double feeds = startup.shares().values().stream()
                .filter(s -> s < 0)
                .mapToDouble(s -> s)
                .sum();
        assertThat(losses).isCloseTo(1, within(1e-12));
        assertThat(feeds).as("a growing mode is fed more than it loses").isLessThan(-1);
        assertThat(startup.shares().get("Q1"))
                .as("the oscillator's transistor feeds")
                .isNegative();
    }

    @Test
    void a_circuit_without_resonance_has_no_mode() {
        assertThat(Startup.readiest(point(Circuit.of(
                        new VoltageSource("V", "a", "ground", new Wave.Direct(5)),
                        new Resistor("R", "a", "b", 1e3),
                        new Capacitor("C", "b", "ground", 1e-9)))))
                .isEmpty();
    }

    /** A JFET far steeper than its tank asks for: two real growing eigenvalues, and the load that tames them is known. */
    @Test
    void a_drive_too_strong_to_turn_round_is_a_start_all_the_same() {
        double l = 50e-6, c = 500e-12, loss = 2e-3, tail = 3e-3;
        OperatingPoint.Found point = point(negativeResistance(tail, loss, l, c));
        assertThat(Linearised.at(point.equations(), point.x()).runaways()).hasSize(2);
        Startup startup = Startup.readiest(point).orElseThrow();
        assertThat(startup.grows()).isTrue();
        Published.source(
                        "engine",
                        Kind.CLOSED_FORM,
                        "negative-resistance oscillator: B. van der Pol, Phil. Mag. 3 (1927) 65, linear part; pair's conductance −I/4V_T")
                .matchesRelative(
                        "conductance it could carry, overdriven, S",
                        tail / (4 * VT) - loss,
                        startup.extraConductance(),
                        1e-7);
    }

    /** A latch's balanced point runs off without oscillating; an oscillator's does not. */
    @Test
    void a_runaway_is_told_from_an_oscillation() {
        Circuit latch = Circuit.of(
                new VoltageSource("V", "rail", "ground", new Wave.Direct(9)),
                new Resistor("R1", "rail", "a", 10e3),
                new Resistor("R2", "rail", "b", 10e3),
                new Resistor("R3", "a", "bb", 47e3),
                new Resistor("R4", "b", "ba", 47e3),
                new Bipolar("Q1", Polarity.N, "a", "ba", "ground", Circuits.npn()),
                new Bipolar("Q2", Polarity.N, "b", "bb", "ground", Circuits.npn()));
        OperatingPoint.Found balanced = point(latch);
        assertThat(balanced.voltage("a")).isCloseTo(balanced.voltage("b"), within(1e-9));
        assertThat(Linearised.at(balanced.equations(), balanced.x()).runaways()).hasSize(1);
        OperatingPoint.Found oscillator = point(Circuits.groundedGateColpitts());
        assertThat(Linearised.at(oscillator.equations(), oscillator.x()).runaways())
                .isEmpty();
    }
}
