package galena.build.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import galena.build.folder.Build;
import galena.build.folder.Builds;
import galena.build.folder.Overlay;
import galena.build.folder.PartEntry;
import galena.build.wiring.CircuitOf;
import galena.build.wiring.Draw;
import galena.build.wiring.Specimens;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Part;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.proof.Kind;
import galena.proof.Published;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** The dual-gate MOSFET of the pattern in its data sheet's own test circuits: every specimen that is drawn lies inside the limits. */
class DualGateSheetTest {
    private static final String BENCH =
            """
            galena: 1
            parts:
              Vd: {voltage: 8 V, plus: drain, minus: ground}
              V2: {voltage: 4 V, plus: gate2, minus: ground}
              V1: {voltage: 0 V, plus: gate1, minus: ground}
              Q2: {dual_gate_mosfet: BF998, drain: drain, gate2: gate2, gate1: gate1, source: ground}
            """;

    /** Leakage of two channels beside milliamperes. */
    private static final double LEAKAGE = 1e-6;

    /** The cutoff of a square law lies a little under the gate voltage at which 20 µA flow. */
    private static final double TEST_CURRENT = 20e-6;

    private static final Map<String, Circuit> SPECIMENS = new LinkedHashMap<>();

    @BeforeAll
    static void specimens() throws Exception {
        Build build = Builds.read(BENCH);
        Circuit typical = CircuitOf.build(build, Overlay.NONE).circuit();
        PartEntry entry = build.part("Q2").orElseThrow();
        Part part = typical.part("Q2").orElseThrow();
        SPECIMENS.put("typical", typical);
        Specimens.Pair pair = Specimens.of(build, entry, part).orElseThrow();
        SPECIMENS.put("weakest", typical.with(pair.weak()));
        SPECIMENS.put("strongest", typical.with(pair.strong()));
        Draw draw = Specimens.drawn(build, entry, part).orElseThrow();
        assertThat(draw.numbers()).isEqualTo(1);
        for (double u : new double[] {0, 0.2, 0.4, 0.6, 0.8, 1})
            SPECIMENS.put("drawn at " + u, typical.with(draw.at(new double[] {u}, 0)));
    }

    private static double current(Circuit circuit, double gate1, double gate2) {
        Circuit set = circuit.with(source("V1", "gate1", gate1)).with(source("V2", "gate2", gate2));
        OperatingPoint point = OperatingPointLadder.climb(Equations.of(set));
        return -((OperatingPoint.Found) point).current("Vd");
    }

    private static VoltageSource source(String name, String net, double volts) {
        return new VoltageSource(name, net, Circuit.GROUND, new Wave.Direct(volts));
    }

    /** Gate 1 for a drain current, by bisection. */
    private static double gate1(Circuit circuit, double amperes) {
        double low = -3, high = 1.5;
        for (int k = 0; k < 50; k++) {
            double middle = (low + high) / 2;
            if (current(circuit, middle, 4) < amperes) low = middle;
            else high = middle;
        }
        return low;
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/dual-gate.csv", numLinesToSkip = 2, encoding = "UTF-8")
    void every_specimen_keeps_to_the_sheet(
            String parameter, Double min, Double typ, Double max, String unit, String conditions, String sheet) {
        Published source = Published.source("build", Kind.TABLE, sheet);
        List<String> seen = new ArrayList<>();
        SPECIMENS.forEach((name, circuit) -> {
            String what = parameter + " of the " + name + " BF998 (" + unit + ", " + conditions + ")";
            switch (parameter) {
                case "IDSS" -> {
                    double found = 1e3 * current(circuit, 0, 4);
                    source.liesWithin(what, min * (1 - LEAKAGE), max * (1 + LEAKAGE), found);
                    if (name.equals("typical")) source.matchesRelative(what + ", typical", typ, found, 1e-5);
                }
                case "gfs" -> {
                    double at = gate1(circuit, 10e-3), step = 1e-3;
                    double found = 1e3 * (current(circuit, at + step, 4) - current(circuit, at - step, 4)) / (2 * step);
                    source.liesWithin(what, min, Double.MAX_VALUE, found);
                    if (name.equals("typical")) source.matchesRelative(what + ", typical", typ, found, 1e-3);
                }
                case "-VG1S(p)" ->
                    source.liesWithin(what + " current at the limit (A)", 0, TEST_CURRENT, current(circuit, -max, 4));
                case "-VG2S(p)" ->
                    source.liesWithin(what + " current at the limit (A)", 0, TEST_CURRENT, current(circuit, 0, -max));
                default -> throw new AssertionError(parameter);
            }
            seen.add(name);
        });
        assertThat(seen).hasSize(SPECIMENS.size());
    }
}
