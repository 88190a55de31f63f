package galena.trade.device;

import java.util.Locale;

/** What a data sheet prints, in words; {@link #word()} is used in data files, {@link #unit()} is the SI unit. */
public enum DeviceQuantity {
    SATURATION_CURRENT("A"),
    CUTOFF_VOLTAGE("V"),
    GATE_SOURCE_VOLTAGE("V"),
    GATE_BREAKDOWN_VOLTAGE("V"),
    GATE_LEAKAGE_CURRENT("A"),
    FORWARD_TRANSCONDUCTANCE("S"),
    OUTPUT_CONDUCTANCE("S"),
    COMMON_GATE_TRANSCONDUCTANCE("S"),
    COMMON_GATE_OUTPUT_CONDUCTANCE("S"),
    ON_RESISTANCE("Ω"),
    INPUT_CAPACITANCE("F"),
    REVERSE_CAPACITANCE("F"),
    OUTPUT_CAPACITANCE("F"),
    DRAIN_GATE_CAPACITANCE("F"),
    SOURCE_GATE_CAPACITANCE("F"),
    NOISE_VOLTAGE("V/√Hz"),
    DRAIN_VOLTAGE_RATING("V"),
    DRAIN_CURRENT_RATING("A"),
    POWER_RATING("W"),
    GATE1_CUTOFF_VOLTAGE("V"),
    GATE2_CUTOFF_VOLTAGE("V"),
    GATE1_CAPACITANCE("F"),
    GATE2_CAPACITANCE("F"),
    CURRENT_GAIN(""),
    BASE_EMITTER_VOLTAGE("V"),
    SATURATED_BASE_EMITTER_VOLTAGE("V"),
    SATURATED_COLLECTOR_VOLTAGE("V"),
    TRANSITION_FREQUENCY("Hz"),
    COLLECTOR_BASE_CAPACITANCE("F"),
    EMITTER_BASE_CAPACITANCE("F"),
    FEEDBACK_CAPACITANCE("F"),
    COLLECTOR_VOLTAGE_RATING("V"),
    EARLY_VOLTAGE("V"),
    FORWARD_VOLTAGE("V"),
    CAPACITANCE("F"),
    CAPACITANCE_RATIO(""),
    RECOVERY_TIME("s"),
    REVERSE_CURRENT("A"),
    REVERSE_VOLTAGE_RATING("V"),
    BREAKDOWN_VOLTAGE("V"),
    SERIES_RESISTANCE("Ω"),
    QUALITY_FACTOR(""),
    MODEL_SATURATION_CURRENT("A"),
    MODEL_FORWARD_BETA(""),
    MODEL_EARLY_VOLTAGE("V"),
    MODEL_KNEE_CURRENT("A"),
    MODEL_LEAKAGE_EMISSION(""),
    MODEL_BETA_EXPONENT(""),
    MODEL_SATURATION_EXPONENT(""),
    MODEL_GAP("eV"),
    MODEL_BASE_RESISTANCE("Ω"),
    MODEL_COLLECTOR_RESISTANCE("Ω"),
    MODEL_COLLECTOR_CAPACITANCE("F"),
    MODEL_COLLECTOR_GRADING(""),
    MODEL_COLLECTOR_POTENTIAL("V"),
    MODEL_EMITTER_CAPACITANCE("F"),
    MODEL_EMITTER_GRADING(""),
    MODEL_EMITTER_POTENTIAL("V"),
    MODEL_FORWARD_TRANSIT_TIME("s"),
    MODEL_REVERSE_TRANSIT_TIME("s"),
    MODEL_FORWARD_BIAS_LIMIT("");

    private final String unit;

    DeviceQuantity(String unit) {
        this.unit = unit;
    }

    /** SI unit in which {@link Printed} and {@link Range} give it; empty for a pure number. */
    public String unit() {
        return unit;
    }

    /** Lower case with underscores, as in data files. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
