package galena.packet.schematic;

import static org.assertj.core.api.Assertions.assertThat;

import galena.build.folder.Build;
import galena.build.folder.BuildReader;
import galena.build.source.BadInputException;
import galena.build.source.SourceFile;
import galena.packet.schematic.Schematic.Care;
import galena.trade.device.DeviceLibrary;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** An op-amp and a stereo source on paper. */
class AudioStageTest {
    private static final String STAGE =
            """
            galena: 1
            supply: {voltage: 9 V, resistance: 2 Ω, ripple: {mains: 50 Hz, twice: 10 mV}}
            parts:
              S1: {stereo: 300 mV, resistance: 100 Ω, left: left, right: right, minus: ground}
              Rl: {resistor: 22k, from: left, to: sum}
              Rr: {resistor: 22k, from: right, to: sum}
              Rf: {resistor: 47k, from: sum, to: out}
              Ry: {resistor: 47k, from: rail, to: half}
              Rz: {resistor: 47k, from: half, to: ground}
              Ch: {capacitor: 10 µF, from: half, to: ground}
              U1: {opamp: {gain_bandwidth: 3 MHz, slew_rate: 1.5 V/µs, swing_low: 1 V, swing_high: 1 V}, noninverting: half, inverting: sum, output: out, plus: rail, minus: ground}
              RL: {resistor: 10k, from: out, to: ground}
            """;

    @Test
    void an_op_amp_and_a_stereo_source_are_drawn_readably() throws BadInputException {
        Build build = BuildReader.read(
                SourceFile.of(Path.of("build.yaml"), "build.yaml", STAGE.getBytes(StandardCharsets.UTF_8)),
                "stage",
                DeviceLibrary.standard());
        Schematic drawing = Schematic.of(build, Care.HASTE, () -> false);
        assertThat(Readability.of(drawing).faults()).isEmpty();
        assertThat(SchematicSvg.draw(drawing))
                .contains(">U1<", ">S1<", Glyph.OPAMP.lines().substring(0, 12));
    }
}
