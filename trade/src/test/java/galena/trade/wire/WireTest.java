package galena.trade.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.proof.Kind;
import galena.proof.Published;
import galena.trade.coil.TurnField;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class WireTest {
    private static final double SIX_FIGURES = 5e-6;

    @ParameterizedTest
    @CsvFileSource(resources = "/published/wire-resistance.csv", delimiter = ';', useHeadersInDisplayName = true)
    void resistance_of_every_size(WireTable.Numbering system, String name, double value) {
        var gauge = WireTable.find(system, name).orElseThrow();
        var wire = Wire.Solid.bareCopper(gauge.diameter());
        Published.source("trade", Kind.STANDARD, "ASTM B258 and IEC 60317 diameters, IEC 60028 copper at 20 °C")
                .matchesRelative(system + " " + name + " (ohm/m)", value, wire.resistancePerMetre(20), SIX_FIGURES);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/copper-temperature.csv", delimiter = ';', useHeadersInDisplayName = true)
    void copper_warms(double celsius, double value) {
        Published.source("trade", Kind.STANDARD, "IEC 60028 (1925): 0.00393/K at 20 °C")
                .matches("R/R20 at " + celsius + " °C", value, Metal.COPPER.resistivity(celsius) / 1.7241e-8, 6e-6);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/litz-bundle.csv", delimiter = ';', useHeadersInDisplayName = true)
    void straight_bundle_of_strands(int strands, double millimetres, double value) {
        double strand = millimetres * 1e-3, bundle = strand * Math.sqrt(strands / 0.5);
        var litz = new Wire.Litz(strands, strand, bundle, bundle, 1, Metal.COPPER);
        double x = SkinEffect.argument(strand, 1.7241e-8, 1e6), fill = strands * strand / bundle;
        double ofTwo = SkinEffect.resistanceRatio(x) + 2 * fill * fill * SkinEffect.proximityFactor(x);
        var terman =
                Published.source("trade", Kind.CLOSED_FORM, "Butterworth's litz relation with k = 2 (Terman 1943)");
        terman.matches(strands + " x " + millimetres + " mm at 1 MHz, R/Rdc", value, ofTwo, 1e-6);
        // the wire's own k lies below 2, so its loss lies between the strand's own and that
        assertThat(TurnField.straightRatio(litz, 1e6, 20)).isBetween(SkinEffect.resistanceRatio(x), ofTwo);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/litz-k.csv", delimiter = ';', useHeadersInDisplayName = true)
    void strand_constant(String strands, double value) {
        int n = strands.equals("infinity") ? 10_000_000 : Integer.parseInt(strands);
        double bundle = 1e-4 * Math.sqrt(n) * 1.5;
        var litz = new Wire.Litz(n, 1e-4, bundle, bundle, 1, Metal.COPPER);
        Published.source("trade", Kind.MEMORY, "Butterworth's k by number of strands (Terman 1943), as recalled")
                .matches("k for " + strands + " strands", value, litz.strandConstant(), 0.005);
    }

    /** Three touching strands: each stands in the field of two others 60 degrees apart. */
    @Test
    void strand_constant_of_three_strands_from_geometry() {
        double field = 2 * Math.cos(Math.PI / 6) / (3 * 2 * Math.PI), across = 1 + 2 / Math.sqrt(3);
        double k = Math.pow(2 * Math.PI * field * across, 2);
        var litz = new Wire.Litz(3, 1e-4, 3e-4, 3e-4, 1, Metal.COPPER);
        Published.source("trade", Kind.CLOSED_FORM, "mean square field in three touching strands")
                .matches("k for 3 strands", k, litz.strandConstant(), 1e-4);
    }

    @Test
    void every_row_says_where_it_comes_from() {
        assertThat(WireTable.sizes()).hasSize(88).allSatisfy(g -> {
            assertThat(g.diameter()).isBetween(1e-5, 3e-3);
            assertThat(g.source()).isNotBlank();
        });
        assertThat(WireTable.sizes())
                .filteredOn(g -> g.system() == WireTable.Numbering.SWG)
                .isNotEmpty()
                .allMatch(g -> !g.basis().isVerified());
        assertThat(Metal.table()).hasSizeGreaterThan(3).allSatisfy(m -> assertThat(m.source())
                .isNotBlank());
    }

    @Test
    void a_strange_reel_is_named() {
        assertThat(WireTable.nearest(WireTable.Numbering.AWG, 0.5e-3).name()).isEqualTo("24");
        assertThat(WireTable.nearest(WireTable.Numbering.METRIC, 0.49e-3).name())
                .isEqualTo("0.5");
        assertThat(WireTable.find(WireTable.Numbering.AWG, "24").orElseThrow().diameter())
                .isCloseTo(0.5106e-3, within(1e-7));
        assertThat(WireTable.find(WireTable.Numbering.SWG, "24.5")).isEmpty();
    }

    @Test
    void bad_sizes_are_refused_with_the_range() {
        assertThatThrownBy(() -> Wire.Solid.copper(0.5e-3, 0.4e-3))
                .isInstanceOf(OutOfRange.class)
                .hasMessageContaining("Measure over the insulation");
        assertThatThrownBy(() -> new Wire.Litz(20, 0.05e-3, 0.1e-3, 0.2e-3, 1, Metal.COPPER))
                .isInstanceOf(OutOfRange.class)
                .hasMessageContaining("bundle");
        assertThatThrownBy(() -> Metal.COPPER.resistivity(300)).hasMessageContaining("-60 to 200");
        assertThatThrownBy(() -> Metal.table().get(3).resistivity(60))
                .hasMessageContaining("No temperature coefficient");
    }
}
