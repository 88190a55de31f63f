package galena.trade.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.proof.Kind;
import galena.proof.Published;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;

class SkinEffectTest {
    /** The rows carry eight decimals. */
    private static final double EIGHTH_DECIMAL = 6e-9;

    /** The internal inductance is noted to six decimals. */
    private static final double SIXTH_DECIMAL = 6e-7;

    private static final Published KELVIN = Published.source(
            "trade", Kind.CLOSED_FORM, "Kelvin's solution of a round wire, Bessel functions; NBS Circular 74 table 22");
    private static final Published BUTTERWORTH = Published.source(
            "trade", Kind.CLOSED_FORM, "S. Butterworth, Exp. Wireless 3 (1926): strand in a cross field");

    @ParameterizedTest
    @CsvFileSource(resources = "/published/skin-by-x.csv", delimiter = ';', useHeadersInDisplayName = true)
    void resistance_and_internal_inductance_by_x(double x, double value, Double internal, Double printed) {
        KELVIN.matches("R/Rdc at x = " + x, value, SkinEffect.resistanceRatio(x), EIGHTH_DECIMAL * Math.max(1, value));
        if (internal != null) {
            KELVIN.matches("Li/Li0 at x = " + x, internal, SkinEffect.internalInductanceRatio(x), SIXTH_DECIMAL);
        }
        if (printed != null) {
            Published.source("trade", Kind.MEMORY, "NBS Circular 74 (1924) table 22, as recalled: four figures")
                    .matchesRelative("R/Rdc at x = " + x, printed, SkinEffect.resistanceRatio(x), 6e-4);
        }
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/skin-by-diameter.csv", delimiter = ';', useHeadersInDisplayName = true)
    void resistance_by_diameter_in_skin_depths(double ratio, double value, Double internal) {
        double x = ratio / Math.sqrt(2);
        KELVIN.matches("R/Rdc at d/depth = " + ratio, value, SkinEffect.resistanceRatio(x), 1e-8 * Math.max(1, value));
        if (internal != null) {
            KELVIN.matches(
                    "Li/Li0 at d/depth = " + ratio, internal, SkinEffect.internalInductanceRatio(x), SIXTH_DECIMAL);
        }
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/litz-g.csv", delimiter = ';', useHeadersInDisplayName = true)
    void loss_of_a_strand_across_a_field(double x, double value) {
        BUTTERWORTH.matches("G at x = " + x, value, SkinEffect.proximityFactor(x), EIGHTH_DECIMAL);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/litz-h.csv", delimiter = ';', useHeadersInDisplayName = true)
    void loss_of_a_strand_in_its_own_field(double x, double value) {
        BUTTERWORTH.matches("H at x = " + x, value, SkinEffect.resistanceRatio(x), EIGHTH_DECIMAL * value);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/skin-depth.csv", delimiter = ';', useHeadersInDisplayName = true)
    void skin_depth_of_copper(double hertz, double value) {
        Published.source("trade", Kind.CLOSED_FORM, "skin depth of IACS copper at 20 °C by definition")
                .matchesRelative("depth at " + hertz + " Hz", value, SkinEffect.depth(1.7241e-8, hertz), 1e-6);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-9, 1e-4, 9.99e-4, 1.01e-3})
    void thin_wire_joins_smoothly_to_direct_current(double x) {
        assertThat(SkinEffect.resistanceRatio(x)).isCloseTo(1, within(1e-12));
        assertThat(SkinEffect.internalInductanceRatio(x)).isCloseTo(1, within(1e-9));
        assertThat(SkinEffect.proximityFactor(x)).isCloseTo(Math.pow(x, 4) / 64, within(1e-18));
    }

    @ParameterizedTest
    @ValueSource(doubles = {200, 1000, 4999})
    void thick_wire_carries_current_in_its_skin(double x) {
        double q = Math.sqrt(2) * x;
        assertThat(SkinEffect.resistanceRatio(x)).isCloseTo(q / 4 + 0.25 + 3 / (16 * q), within(1e-4));
        assertThat(SkinEffect.proximityFactor(x)).isCloseTo((q - 1) / 8, within(1e-3));
    }

    @Test
    void refuses_what_is_no_wire() {
        assertThatThrownBy(() -> SkinEffect.resistanceRatio(Double.NaN)).isInstanceOf(OutOfRange.class);
        assertThatThrownBy(() -> SkinEffect.resistanceRatio(6000))
                .isInstanceOf(OutOfRange.class)
                .hasMessageContaining("0 to 5000");
        assertThatThrownBy(() -> SkinEffect.depth(1.7e-8, 0)).hasMessageContaining("more than 0");
    }
}
