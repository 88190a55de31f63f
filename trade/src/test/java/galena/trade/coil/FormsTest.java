package galena.trade.coil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import galena.proof.Kind;
import galena.proof.Published;
import galena.trade.wire.OutOfRange;
import galena.trade.wire.Wire;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class FormsTest {
    private static final double CLOSED_FORM = 1e-6;

    @ParameterizedTest
    @CsvFileSource(resources = "/published/straight-wire.csv", delimiter = ';', useHeadersInDisplayName = true)
    void straight_wire(double length, double diameter, double internal, double value) {
        Published.source("trade", Kind.CLOSED_FORM, "E. B. Rosa, Bull. Bur. Stand. 4 (1908) p. 301: straight wire")
                .matchesRelative(
                        "L of " + length + " m, " + diameter + " m thick, internal " + internal,
                        value,
                        StraightWire.inductance(length, diameter, internal),
                        CLOSED_FORM);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/circular-loop.csv", delimiter = ';', useHeadersInDisplayName = true)
    void one_circular_turn(double radius, double diameter, double internal, double value, Double mutual) {
        var grover = Published.source("trade", Kind.CLOSED_FORM, "F. W. Grover (1946): circular turn of round wire");
        grover.matchesRelative(
                "L of a ring of radius " + radius + " m, internal " + internal,
                value,
                CircularLoop.inductance(radius, diameter / 2, internal),
                CLOSED_FORM);
        if (mutual != null) {
            grover.matchesRelative(
                    "mutual inductance of filaments a and a − r, a = " + radius + " m",
                    mutual,
                    CoaxialLoops.mutual(radius, radius - diameter / 2, 0),
                    CLOSED_FORM);
        }
        if (internal == 1) {
            // a single layer of one turn is the same ring; sheet and corrections differ from it by order
            // (pitch/radius)²
            var layer = new SingleLayer(1, 2 * radius, diameter, Wire.Solid.bareCopper(diameter));
            grover.matchesRelative("the same as a single layer of one turn", value, layer.inductance(), 1e-4);
        }
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/square-loop.csv", delimiter = ';', useHeadersInDisplayName = true)
    void one_square_turn(double side, double diameter, double skinLimit, double uniform) {
        var grover =
                Published.source("trade", Kind.CLOSED_FORM, "F. W. Grover (1946) ch. 8: square turn of round wire");
        var frame = new RectangularFrame(
                1, side, side, diameter, RectangularFrame.Lay.BOX, Wire.Solid.bareCopper(diameter));
        grover.matchesRelative("square of " + side + " m, uniform current", uniform, frame.inductance(), CLOSED_FORM);
        grover.matchesRelative(
                "square of " + side + " m, current in the skin",
                skinLimit,
                Rectangles.inductance(side, side, diameter / 2, 0),
                CLOSED_FORM);
    }

    /**
     * Sum over true rings, Maxwell's mutual inductances and Rayleigh's ring: nothing of sheets or corrections in it.
     */
    @ParameterizedTest
    @CsvSource({
        "1.0e-3, 25e-3, 40, 1.2",
        "0.5e-3, 50e-3, 60, 1.1",
        "0.3e-3, 10e-3, 100, 1.05",
        "2e-3, 60e-3, 12, 3",
        "1e-3, 20e-3, 5, 4",
        "0.4e-3, 250e-3, 15, 10"
    })
    void single_layer_meets_the_sum_over_its_rings(double wire, double diameter, int turns, double spacing) {
        double pitch = wire * spacing, sum = 0;
        for (int i = 0; i < turns; i++) {
            sum += CircularLoop.inductance(diameter / 2, wire / 2, 1);
            for (int j = 0; j < i; j++) sum += 2 * CoaxialLoops.mutual(diameter / 2, diameter / 2, (i - j) * pitch);
        }
        var coil = new SingleLayer(turns, diameter, pitch, Wire.Solid.bareCopper(wire));
        Published.source("trade", Kind.CLOSED_FORM, "sum over coaxial rings, Maxwell's Treatise art. 701")
                .matchesRelative(
                        turns + " turns on " + diameter + " m, L (H)", sum, coil.inductance(), coil.modelError());
    }

    /** Multilayer against the same sum over rings: layers as sheets must give back the turns they stand for. */
    @ParameterizedTest
    @CsvSource({"0.5e-3, 10e-3, 10e-3, 95", "0.2e-3, 8e-3, 5e-3, 300", "1e-3, 40e-3, 8e-3, 37"})
    void multilayer_meets_the_sum_over_its_rings(double wire, double hub, double width, int turns) {
        var coil = new Multilayer(turns, hub, width, wire * 1.1, wire * 1.1, Wire.Solid.copper(wire, wire * 1.05));
        int each = coil.turnsPerLayer();
        double[] z = new double[turns], r = new double[turns];
        Arrays.setAll(z, i -> i % each * wire * 1.1);
        Arrays.setAll(r, i -> (hub + wire * 1.05) / 2 + i / each * wire * 1.1);
        double sum = 0;
        for (int i = 0; i < turns; i++) {
            sum += CircularLoop.inductance(r[i], wire / 2, 1);
            for (int j = 0; j < i; j++) sum += 2 * CoaxialLoops.mutual(r[i], r[j], z[i] - z[j]);
        }
        Published.source("trade", Kind.CLOSED_FORM, "sum over coaxial rings, Maxwell's Treatise art. 701")
                .matchesRelative(turns + " turns in layers, L (H)", sum, coil.inductance(), 3e-3);
    }

    /** Brooks's coil: square section of side c, mean radius 1.5 c, L = 1.6994e-6·a·N² (H), figure from memory. */
    @Test
    void multilayer_meets_brookss_coil() {
        double wire = 1e-3, side = 30e-3, mean = 45e-3;
        var coil = new Multilayer(900, 2 * (mean - side / 2), side, wire, wire, Wire.Solid.bareCopper(wire));
        Published.source(
                        "trade",
                        Kind.MEMORY,
                        "H. B. Brooks, Bur. Stand. J. Res. 7 (1931): 1.6994 µH per metre of mean radius")
                .matchesRelative("900 turns, L (H)", 1.6994e-6 * mean * 900 * 900, coil.inductance(), 0.002);
    }

    /**
     * H. A. Wheeler 1928: flat spiral a²n²/(8a + 11c) µH in inches, within 5 % for c over 0.2a; formula from memory.
     */
    @ParameterizedTest
    @CsvSource({"30, 20e-3, 1e-3", "20, 60e-3, 2e-3", "50, 30e-3, 0.6e-3"})
    void flat_spiral_stays_near_wheelers_formula(double turns, double inner, double pitch) {
        var coil = new FlatSpiral(turns, inner, pitch, Wire.Solid.bareCopper(pitch * 0.7));
        double c = turns * pitch / 0.0254, a = inner / 2 / 0.0254 + c / 2;
        double wheeler = a * a * turns * turns / (8 * a + 11 * c) * 1e-6;
        Published.source(
                        "trade", Kind.MEMORY, "H. A. Wheeler, Proc. IRE 16 (1928): flat spiral within 5 %, as recalled")
                .matchesRelative(turns + " turns, L (H)", wheeler, coil.inductance(), 0.05);
    }

    /** More area, more inductance: a square frame stands between the circles inside and outside it. */
    @Test
    void square_frame_lies_between_its_inscribed_and_circumscribed_circles() {
        var wire = Wire.Solid.copper(0.6e-3, 0.65e-3);
        var frame = new RectangularFrame(12, 0.4, 0.4, 4e-3, RectangularFrame.Lay.BOX, wire);
        var inside = new SingleLayer(12, 0.4, 4e-3, wire);
        var outside = new SingleLayer(12, 0.4 * Math.sqrt(2), 4e-3, wire);
        assertThat(frame.inductance()).isBetween(inside.inductance(), outside.inductance());
        // equal areas have nearly equal inductance: a square and a circle differ by a few per cent
        var equal = new SingleLayer(12, 0.8 / Math.sqrt(Math.PI), 4e-3, wire);
        assertThat(frame.inductance() / equal.inductance()).isBetween(1.0, 1.08);
    }

    @Test
    void mutual_inductance_of_squares_falls_to_that_of_dipoles() {
        double side = 0.1, far = 5;
        double dipoles = 4e-7 * Math.PI * Math.pow(side, 4) / (2 * Math.PI * far * far * far);
        Published.source("trade", Kind.CLOSED_FORM, "coaxial dipoles, µ₀S²/(2πz³)")
                .matchesRelative(
                        "squares 50 sides apart (H)", dipoles, Rectangles.mutual(side, side, side, side, far), 2e-3);
        assertThat(CoaxialLoops.mutual(0.1, 0.1, 10))
                .isCloseTo(4e-7 * Math.PI * Math.pow(Math.PI * 0.01, 2) / (2 * Math.PI * 1000), withinPercentage(0.05));
    }

    @Test
    void skin_effect_takes_the_internal_inductance_away() {
        var coil = new SingleLayer(30, 50e-3, 1.2e-3, Wire.Solid.bareCopper(1e-3));
        double lost = coil.inductance() - coil.inductance(1e9, 20);
        assertThat(lost).isCloseTo(4e-7 * Math.PI * 25e-3 * 30 / 4, within(2e-9));
    }

    @Test
    void part_turns_rise_smoothly() {
        var wire = Wire.Solid.copper(0.3e-3, 0.33e-3);
        double before = 0;
        for (double n = 1; n < 60; n += 0.25) {
            double layers = new Multilayer(n, 12e-3, 6e-3, 0.33e-3, 0.33e-3, wire).inductance();
            assertThat(layers).isGreaterThan(before);
            before = layers;
        }
    }

    @Test
    void ranges_are_enforced_and_named() {
        var wire = Wire.Solid.copper(0.5e-3, 0.55e-3);
        assertThatThrownBy(() -> new SingleLayer(10, 25e-3, 0.5e-3, wire))
                .isInstanceOf(OutOfRange.class)
                .hasMessageContaining("pitch");
        assertThatThrownBy(() -> new SingleLayer(10, 25e-3, 8e-3, wire)).isInstanceOf(OutOfRange.class);
        assertThatThrownBy(() -> new SingleLayer(0.5, 25e-3, 1e-3, wire)).isInstanceOf(OutOfRange.class);
        assertThatThrownBy(() -> new SingleLayer(10, Double.NaN, 1e-3, wire)).isInstanceOf(OutOfRange.class);
        assertThatThrownBy(() -> new Multilayer(100_000, 5e-3, 5e-3, 0.55e-3, 0.55e-3, wire))
                .isInstanceOf(OutOfRange.class)
                .hasMessageContaining("60 layers");
        assertThatThrownBy(() -> new FlatSpiral(10, 1e-3, 0.55e-3, wire)).isInstanceOf(OutOfRange.class);
        assertThatThrownBy(() -> new RectangularFrame(60, 0.2, 0.2, 4e-3, RectangularFrame.Lay.FLAT, wire))
                .isInstanceOf(OutOfRange.class)
                .hasMessageContaining("extent");
    }
}
