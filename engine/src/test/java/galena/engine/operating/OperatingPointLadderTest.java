package galena.engine.operating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.engine.Circuits;
import galena.engine.circuit.Circuit;
import galena.engine.circuit.Structure;
import galena.engine.equations.Equations;
import galena.engine.equations.Evaluation;
import galena.engine.part.Battery;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.CurrentSource;
import galena.engine.part.Diode;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Mosfet;
import galena.engine.part.Part;
import galena.engine.part.Polarity;
import galena.engine.part.Resistor;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.proof.Kind;
import galena.proof.Published;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class OperatingPointLadderTest {
    private static final long SEED = 1907;

    private static OperatingPoint.Found climb(Circuit circuit) {
        OperatingPoint point = OperatingPointLadder.climb(Equations.of(circuit));
        assertThat(point).as("seed %d", SEED).isInstanceOf(OperatingPoint.Found.class);
        return (OperatingPoint.Found) point;
    }

    /** Kirchhoff's law to rounding: the currents out of every net against the largest of them. */
    private static void balances(OperatingPoint.Found point) {
        Equations equations = point.equations();
        Evaluation e = equations.newEvaluation();
        equations.evaluate(point.x(), 0, e);
        for (int row = 1; row <= equations.size(); row++) {
            double volts = equations.isCurrent(row) ? 1e-10 : 1e-12;
            assertThat(e.i[row]).as("balance of %s", equations.name(row)).isCloseTo(0, within(volts));
        }
    }

    /** Direct-coupled amplifiers in a chain, the last one's output led back to the first. */
    private static Circuit ring(int stages) {
        List<Part> parts = new ArrayList<>();
        parts.add(new VoltageSource("V", "rail", "ground", new Wave.Direct(12)));
        parts.add(new Resistor("R", "rail", "b0", 1e5));
        for (int k = 0; k < stages; k++) {
            parts.add(new Bipolar("Q" + k, Polarity.N, "b" + (k + 1), "b" + k, "ground", Circuits.npn()));
            parts.add(new Resistor("Rc" + k, "rail", "b" + (k + 1), 1e4));
        }
        parts.add(new Resistor("Rf", "b" + stages, "b0", 1e4));
        return Circuit.of(parts);
    }

    @ParameterizedTest
    @CsvSource({"4, NEWTON", "9, SUPPLY_STEPPING", "15, DAMPED_SWITCH_ON"})
    void every_rung_of_the_ladder_holds_somewhere(int stages, OperatingPoint.Rung rung) {
        OperatingPoint.Found point = climb(ring(stages));
        assertThat(point.rung()).isEqualTo(rung);
        balances(point);
    }

    @Test
    void a_point_that_no_rung_reaches_is_refused_with_its_place() {
        Mosfet.Model model = new Mosfet.Model(1.5, 5e-3, 0, 3e-12, 1e-12, 1e-12, 1e-12, null);
        List<Part> parts = new ArrayList<>();
        parts.add(new VoltageSource("V", "rail", "ground", new Wave.Direct(12)));
        parts.add(new Resistor("R", "rail", "b0", 1e5));
        parts.add(new Resistor("R2", "ground", "b0", 1e5));
        for (int k = 0; k < 5; k++) {
            parts.add(new Mosfet("N" + k, Polarity.N, "b" + (k + 1), "b" + k, "ground", model));
            parts.add(new Mosfet("P" + k, Polarity.P, "b" + (k + 1), "b" + k, "rail", model));
        }
        OperatingPoint point = OperatingPointLadder.climb(Equations.of(Circuit.of(parts)));
        assertThat(point).isInstanceOf(OperatingPoint.NotFound.class);
        OperatingPoint.NotFound none = (OperatingPoint.NotFound) point;
        assertThat(none.reachedSupply()).isBetween(0.0, 1.0);
        assertThat(parts.stream().map(Part::name)).contains(none.part());
        assertThat(none.toString()).contains(none.net()).contains(none.part());
    }

    /** JFETs of 1 to 20 mA and 0.6 to 6 V, −10 to +50 °C, a battery from fresh to flat. */
    @Test
    void oscillators_and_a_transmitter_are_met_by_newton_over_a_wide_spread() {
        Random random = new Random(SEED);
        int most = 0;
        for (int k = 0; k < 300; k++) {
            Circuit base =
                    switch (k % 4) {
                        case 0 -> Circuits.groundedGateColpitts();
                        case 1 -> Circuits.gateLeakHartley();
                        case 2 -> Circuits.bipolarColpitts();
                        default -> Circuits.transmitter();
                    };
            Circuit circuit = spread(base, random);
            assertThat(Structure.faults(circuit)).isEmpty();
            OperatingPoint.Found point = climb(circuit);
            assertThat(point.rung()).as("draw %d of seed %d", k, SEED).isEqualTo(OperatingPoint.Rung.NEWTON);
            balances(point);
            most = Math.max(most, point.iterations());
        }
        assertThat(most).as("Newton iterations of the hardest draw").isLessThanOrEqualTo(40);
    }

    private static Circuit spread(Circuit base, Random random) {
        Circuit circuit = base.atTemperature(-10 + 60 * random.nextDouble());
        circuit = circuit.with(
                new Battery("B", "rail", "ground", 5 + 5 * random.nextDouble(), 0.5 + 20 * random.nextDouble()));
        double idss = 1e-3 * Math.pow(20, random.nextDouble()), pinchOff = -0.6 * Math.pow(10, random.nextDouble());
        for (Part part : base.parts()) {
            if (part instanceof Jfet q) {
                circuit = circuit.with(new Jfet(
                        q.name(), q.polarity(), q.drain(), q.gate(), q.source(), Circuits.jfet(idss, pinchOff)));
            }
        }
        return circuit;
    }

    /** A wrongly wired diode draws amperes; a builder should be told so and not that nothing was found. */
    @ParameterizedTest
    @ValueSource(doubles = {0.2, 2, 20, 2000, 2e6})
    void a_diode_straight_across_a_battery_is_met_too(double resistance) {
        Junction junction = Junction.silicon(1e-14, 1, 2e-12, 0.7, 0.5, 0);
        OperatingPoint.Found point = climb(Circuit.of(
                new Battery("B", "rail", "ground", 9, resistance), new Diode("D", "rail", "ground", junction)));
        assertThat(point.rung()).isEqualTo(OperatingPoint.Rung.NEWTON);
        balances(point);
    }

    /** V = I R + n V_T ln(1 + I/I_S): the source voltage is worked out for a wanted current. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-6, 1e-4, 1e-2})
    void a_diode_behind_a_resistor_takes_the_current_of_the_closed_form(double current) {
        double vt = 1.380649e-23 * 298.15 / 1.602176634e-19, saturation = 3e-9, emission = 1.8, resistance = 470;
        double v = current * resistance + emission * vt * Math.log1p(current / saturation);
        Junction junction =
                Junction.silicon(saturation, emission, 0, 0.7, 0.5, 0).withLeakage(0);
        OperatingPoint.Found point = climb(Circuit.of(
                new VoltageSource("V", "in", "ground", new Wave.Direct(v)),
                new Resistor("R", "in", "a", resistance),
                new Diode("D", "a", "ground", junction)));
        Published.source(
                        "engine",
                        Kind.CLOSED_FORM,
                        "W. Shockley, Bell Syst. Tech. J. 28 (1949) 435: V = IR + nV_T ln(1 + I/I_S)")
                .matchesRelative("diode current for " + current + " A", current, -point.current("V"), 1e-9);
    }

    /** I = I_DSS (1 − I R/|V_P|)², a quadratic in I. */
    @ParameterizedTest
    @CsvSource({"8e-3, -2.5, 680", "2e-3, -0.8, 1000", "15e-3, -5, 220"})
    void a_self_biased_jfet_rests_where_the_square_law_says(double idss, double pinchOff, double resistance) {
        Junction gate = Junction.silicon(1e-16, 1, 0, 0.8, 0.5, 0).withLeakage(0);
        OperatingPoint.Found point = climb(Circuit.of(
                new VoltageSource("V", "rail", "ground", new Wave.Direct(20)),
                new Jfet("Q", Polarity.N, "rail", "ground", "source", new Jfet.Model(idss, pinchOff, 0, gate, gate)),
                new Resistor("R", "source", "ground", resistance)));
        // with r = R/|V_P|: I_DSS r² I² − (2 I_DSS r + 1) I + I_DSS = 0, the smaller root
        double r = resistance / -pinchOff, b = 2 * idss * r + 1;
        double expected = (b - Math.sqrt(b * b - 4 * idss * r * idss * r)) / (2 * idss * r * r);
        Published.source(
                        "engine",
                        Kind.CLOSED_FORM,
                        "L. J. Sevin, Field-Effect Transistors (1965): square law with source resistor")
                .matchesRelative("self-bias current", expected, point.voltage("source") / resistance, 1e-9);
    }

    @Test
    void halving_the_leakage_of_devices_moves_no_operating_point() {
        for (Circuit circuit :
                List.of(Circuits.groundedGateColpitts(), Circuits.gateLeakHartley(), Circuits.transmitter())) {
            OperatingPoint.Found usual = climb(circuit),
                    halved = climb(withLeakage(circuit, Junction.USUAL_LEAKAGE / 2));
            for (String net : circuit.nets()) {
                assertThat(halved.voltage(net)).as(net).isCloseTo(usual.voltage(net), within(1e-5));
            }
        }
    }

    private static Circuit withLeakage(Circuit circuit, double siemens) {
        Circuit changed = circuit;
        for (Part part : circuit.parts()) {
            if (part instanceof Jfet q) {
                Junction gate = q.model().gateSource().withLeakage(siemens);
                Jfet.Model model = new Jfet.Model(
                        q.model().saturationCurrent(),
                        q.model().pinchOff(),
                        q.model().channelLengthModulation(),
                        gate,
                        gate);
                changed = changed.with(new Jfet(q.name(), q.polarity(), q.drain(), q.gate(), q.source(), model));
            }
        }
        return changed;
    }

    /** Coils in series hold their net by their currents alone: index 2, met all the same. */
    @Test
    void coils_in_series_and_a_capacitor_across_a_source_are_solved() {
        OperatingPoint.Found point = climb(Circuit.of(
                new VoltageSource("V", "rail", "ground", new Wave.Direct(6)),
                new Capacitor("C", "rail", "ground", 1e-6),
                new Coil("L1", "rail", "middle", 1e-3, 4, 0, 0),
                new Coil("L2", "middle", "out", 1e-3, 2, 0, 0),
                new Resistor("R", "out", "ground", 594)));
        assertThat(point.current("L1")).isCloseTo(0.01, within(1e-12));
        assertThat(point.current("L2")).isCloseTo(0.01, within(1e-12));
    }

    @Test
    void current_sources_set_their_nets() {
        OperatingPoint.Found point = climb(Circuit.of(
                new CurrentSource("I", "ground", "a", new Wave.Direct(2e-3)), new Resistor("R", "a", "ground", 1500)));
        assertThat(point.voltage("a")).isCloseTo(3, within(1e-12));
    }
}
