package galena.build.folder;

import galena.build.source.BadInputException;
import galena.build.source.Problem;
import galena.build.source.SourceFile;
import galena.trade.device.DeviceLibrary;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;

/** Builds made from texts. */
public final class Builds {
    /** Every kind of part and every key at least once. */
    public static final String EVERYTHING =
            """
            galena: 1
            name: Lighthouse sender   # an invented one
            note: every kind of part
            intent:
              carrier: 999 kHz
              rules: cept
              distance: 4 m
              modulation: 85 %
              programme: {level: 300 mV, band: 60 Hz..4.5 kHz}
              runtime: 20 h
              harmonics: -40 dBc
              raster: 9 kHz
            supply: {battery: 6xAA-NiMH, charge: 80 %, plus: rail, minus: ground}
            parts:
              Lt: {coil: 180 µH, q: 85 @ 1 MHz, self_capacitance: 3 pF, tolerance: 5 %, tempco: 60 ppm/K, from: rail, to: drain}
              Ls: {coil: 150..210 µH, set: 30 %, resistance: 12 Ω, from: drain, to: tap}
              La: {loopstick: 320 µH, q: 120 @ 1 MHz, turns: 62, rod_length: 140 mm, rod_diameter: 10 mm, winding_length: 30 mm, winding_diameter: 11 mm, position: -20 mm, permeability: 250, lead: 5 cm, ground_lead: 0 m, from: out, to: ground}
              Lf: {loop: 200 µH, q: 100 @ 1 MHz, turns: 12, width: 60 cm, height: 0.5 m, from: out, to: tap}
              Lr: {loop: 20 µH, resistance: 2 Ω, turns: 3, diameter: 80 cm, from: out, to: tap}
              Wa: {wire: 3 m, diameter: 1 mm, base_height: 1 m, top_capacitance: 10 pF, ground_loss: 40 Ω, lead: 20 cm, ground_lead: 1 m, from: out, to: ground}
              Ct: {trimmer: 5..60 pF, set: 40 %, tempco: N750, from: drain, to: source}
              Cs: {capacitor: 1n0, tolerance: J, tempco: NP0, from: source, to: ground, note: polystyrene}
              Co: {capacitor: 10p, from: drain, to: out}
              Rs: {resistor: 2k2, from: source, to: ground}
              Rp: {preset: 10k, set: 25 %, end_resistance: 100 Ω, from: rail, wiper: bias, to: ground}
              Rd: {resistor: 470R, from: rail, to: d2}
              Rb: {resistor: 1M, from: bias, to: g2}
              Rv: {resistor: 100k, from: bias, to: vari}
              Xt: {crystal: 3.996 MHz, shunt_capacitance: 5 pF, motional_capacitance: 20 fF, q: 60000, from: drain, to: ground}
              Xc: {resonator: 1 MHz, shunt_capacitance: 100 pF, motional_inductance: 5 mH, resistance: 20 Ω, from: out, to: ground}
              D1: {diode: 1N4148, anode: out, cathode: ground}
              D2: {diode: {saturation_current: 4 nA, emission: 1.8, capacitance: 2 pF, series_resistance: 0.5 Ω}, anode: ground, cathode: out}
              V1: {tuning_diode: {capacitance: 40 pF, built_in: 0.7 V, grading: 0.5}, anode: ground, cathode: vari}
              Q1: {jfet: BF256B, drain: drain, gate: ground, source: source}
              Q2: {npn: 2N3904, collector: rail, base: bias, emitter: e2}
              Q3: {pnp: 2N3906, collector: ground, base: bias, emitter: rail}
              Q4: {jfet: {saturation_current: 8 mA, pinch_off: -2.1 V}, channel: p, drain: ground, gate: bias, source: rail}
              Q5: {mosfet: {threshold: 2 V, square_law: 50 mA/V², body_diode: {saturation_current: 1 pA}}, drain: d2, gate: bias, source: ground}
              Q6: {dual_gate_mosfet: BF961, drain: d2, gate2: g2, gate1: bias, source: ground}
              Q7: {npn: {saturation_current: 10 fA, beta: 200, early_voltage: 80 V}, collector: rail, base: bias, emitter: e2}
              Re: {resistor: 1k, from: e2, to: ground}
              Au: {audio: programme, resistance: 600 Ω, plus: g2, minus: ground}
              St: {stereo: 200 mV, frequency: 400 Hz, resistance: 47 Ω, left: bias, right: g2, minus: ground}
              U1: {opamp: {gain_bandwidth: 3 MHz, slew_rate: 13 V/µs, swing_low: 1.5 V, swing_high: 1.5 V, input_bias: 20 nA}, noninverting: bias, inverting: e2, output: e2, plus: rail, minus: ground}
              Vb: {voltage: 5 V, resistance: 1k, plus: bias, minus: ground}
              Vs: {voltage: 100 mV, frequency: 1 MHz, offset: 1 V, phase: 90, resistance: 50 Ω, plus: tap, minus: ground}
              I1: {current: 1 mA, from: rail, to: e2}
              M1: {load: 10M, capacitance: 15 pF, from: bias, to: ground}
            strays:
              - {from: drain, to: ground, capacitance: 3 pF}
            couplings:
              - {between: [Lt, La], k: 0.002}
            points:
              TP1: {at: drain, probe: 10x}
              TP2: {at: out, to: ground, probe: {resistance: 1 MΩ, capacitance: 20 pF}, note: by the rod}
            """;

    /** A small stage with nothing to complain about. */
    public static final String STAGE =
            """
            galena: 1
            supply: {voltage: 9 V, resistance: 2 Ω}
            parts:
              Lt: {coil: 180 µH, q: 85 @ 1 MHz, from: rail, to: drain}
              Ct: {trimmer: 5..60 pF, set: 40 %, from: rail, to: drain}
              Cs: {capacitor: 1n, from: source, to: ground}
              Rs: {resistor: 1k, from: source, to: ground}
              Q1: {jfet: BF256B, drain: drain, gate: ground, source: source}
              La: {coil: 20 µH, resistance: 2 Ω, from: out, to: ground}
              Ra: {resistor: 1k, from: out, to: ground}
            strays:
              - {from: drain, to: ground, capacitance: 3 pF}
            couplings:
              - {between: [Lt, La], k: 0.1}
            points:
              TP1: {at: drain, probe: 10x}
            """;

    private Builds() {}

    public static Build read(String text) throws BadInputException {
        SourceFile file = SourceFile.of(Path.of("build.yaml"), "build.yaml", text.getBytes(StandardCharsets.UTF_8));
        return BuildReader.read(file, "folder", DeviceLibrary.standard());
    }

    /** The problems of a build that must have some. */
    public static List<Problem> problems(String text) {
        try {
            read(text);
        } catch (BadInputException bad) {
            return bad.problems();
        }
        throw new AssertionError("nothing was found wrong with\n" + text);
    }
}
