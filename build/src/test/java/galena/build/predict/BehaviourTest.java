package galena.build.predict;

import static org.assertj.core.api.Assertions.assertThat;

import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.engine.steady.Accuracy;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A gate-leak Hartley with its leak, its bias and its load changed until it does what nobody wants. */
class BehaviourTest {
    private static final String HARTLEY =
            """
            galena: 1
            name: Tried
            supply: {voltage: 9 V, resistance: 2 Ω}
            parts:
              Cd: {capacitor: 100 nF, from: rail, to: ground}
              La: {coil: 90 µH, q: 80 @ 1 MHz, from: top, to: tap}
              Lb: {coil: LB, q: 60 @ 1 MHz, from: tap, to: ground}
              Ct: {capacitor: 160 pF, from: top, to: ground}
              Cs: {capacitor: 22 pF, from: tap, to: ground}
              Cg: {capacitor: CG, from: top, to: gate}
              Rg: {resistor: 220 kΩ, from: gate, to: bias}
              Vb: {voltage: BIAS, plus: bias, minus: ground}
              Rl: {resistor: LOAD, from: top, to: ground}
              Q1: {jfet: {saturation_current: 8 mA, pinch_off: PINCH}, drain: rail, gate: gate, source: tap}
            couplings:
              - {between: [La, Lb], k: 0.9}
            """;

    @TempDir
    private Path folder;

    private Prediction predict(String tap, String gate, String bias, String load, String pinchOff) throws Exception {
        String text = HARTLEY.replace("LB", tap)
                .replace("CG", gate)
                .replace("BIAS", bias)
                .replace("LOAD", load)
                .replace("PINCH", pinchOff);
        Files.writeString(folder.resolve("build.yaml"), text);
        return Predict.of(BuildFolder.open(folder), Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
    }

    @Test
    void nothing_is_added_where_it_starts_and_stays() throws Exception {
        Prediction prediction = predict("6 µH", "47 pF", "0 V", "50 kΩ", "-2.5 V");
        assertThat(prediction.startup().orElseThrow().starts()).isTrue();
        assertThat(prediction.startup().orElseThrow().behaviour()).isEmpty();
        assertThat(prediction.notes()).isEmpty();
    }

    @Test
    void a_gate_held_beyond_pinch_off_starts_only_if_kicked_and_the_kick_is_named() throws Exception {
        Prediction prediction = predict("6 µH", "47 pF", "-3.2 V", "50 kΩ", "-2.5 V");
        assertThat(prediction.startup().orElseThrow().starts()).isFalse();
        assertThat(prediction.startup().orElseThrow().behaviour()).isEqualTo("starts only if kicked");
        assertThat(prediction.running()).isInstanceOf(Prediction.Oscillation.class);
        assertThat(prediction.notes()).anyMatch(n -> n.matches(".* stable, beyond a kick of 1\\.\\d+ V peak"));
    }

    @Test
    void a_long_leak_squegs_and_is_watched() throws Exception {
        Prediction prediction = predict("2 µH", "4.7 nF", "0 V", "2 kΩ", "-1.2 V");
        assertThat(prediction.startup().orElseThrow().behaviour()).startsWith("squegs");
        assertThat(prediction.notes()).anyMatch(n -> n.contains("peaks end between 0 % and 100 %"));
    }

    @Test
    void too_much_load_decays() throws Exception {
        Prediction prediction = predict("6 µH", "47 pF", "-4 V", "5 kΩ", "-2.5 V");
        assertThat(prediction.startup().orElseThrow().behaviour()).isEqualTo("decays");
        assertThat(prediction.running()).isInstanceOf(Prediction.Silent.class);
    }
}
