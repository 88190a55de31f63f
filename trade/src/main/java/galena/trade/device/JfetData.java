package galena.trade.device;

import static galena.trade.device.DeviceQuantity.CUTOFF_VOLTAGE;
import static galena.trade.device.DeviceQuantity.FORWARD_TRANSCONDUCTANCE;
import static galena.trade.device.DeviceQuantity.GATE_SOURCE_VOLTAGE;
import static galena.trade.device.DeviceQuantity.OUTPUT_CONDUCTANCE;
import static galena.trade.device.DeviceQuantity.SATURATION_CURRENT;

import galena.trade.source.Provenance;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** A junction field-effect transistor. Voltages of {@code sheet()} are signed as printed; the ranges here are not. */
public record JfetData(Sheet sheet) implements Device {
    public JfetData {
        if (sheet.family() != Family.N_JFET && sheet.family() != Family.P_JFET) {
            throw new IllegalArgumentException(sheet.type() + " is no JFET");
        }
    }

    /**
     * A builder's own device from the least a sheet or a bench gives: IDSS and cutoff, both as one measured value.
     *
     * @param saturationCurrent drain current with gate tied to source (A)
     * @param cutoff magnitude of the gate voltage at which it stops conducting (V)
     * @param drainSource voltage at which IDSS was read (V)
     * @param source who measured or printed it
     */
    public static JfetData measured(
            String type, double saturationCurrent, double cutoff, double drainSource, String source) {
        Provenance provenance = Provenance.builder(source);
        List<Printed> rows = new ArrayList<>();
        rows.add(typical(SATURATION_CURRENT, saturationCurrent, Map.of("VDS", drainSource, "VGS", 0.0), provenance));
        rows.add(typical(CUTOFF_VOLTAGE, -cutoff, Map.of("VDS", drainSource), provenance));
        return new JfetData(new Sheet(type, Family.N_JFET, rows, ""));
    }

    private static Printed typical(
            DeviceQuantity quantity, double value, Map<String, Double> at, Provenance provenance) {
        OptionalDouble none = OptionalDouble.empty();
        return new Printed(quantity, none, OptionalDouble.of(value), none, at, provenance);
    }

    /** IDSS (A). */
    public Range saturationCurrent() {
        return range(SATURATION_CURRENT).magnitude();
    }

    /** |VGS(off)| (V), at the small drain current of the row's conditions. */
    public Range cutoffVoltage() {
        return range(CUTOFF_VOLTAGE).magnitude();
    }

    /** |VGS| at a stated drain current (V). */
    public Range gateSourceVoltage() {
        return range(GATE_SOURCE_VOLTAGE).magnitude();
    }

    /** gfs or |yfs| (S). */
    public Range forwardTransconductance() {
        return range(FORWARD_TRANSCONDUCTANCE);
    }

    /** gos or |yos| (S). */
    public Range outputConductance() {
        return range(OUTPUT_CONDUCTANCE);
    }

    /** Parameters of the typical device. */
    public ModelAnswer<JfetModel> typical() {
        return new JfetDerivation(this).typical();
    }

    /** Devices that lie within every printed limit, to draw from, and the weak and strong ones that exist. */
    public ModelAnswer<JfetSpread> spread() {
        return JfetSpread.of(this);
    }
}
