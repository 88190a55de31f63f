package galena.trade.device;

import java.util.List;

/** One type number and what is printed about it. */
public sealed interface Device permits JfetData, BipolarData, DualGateMosfetData, DiodeData, TuningDiodeData {
    /** Everything printed, with source and test conditions. */
    Sheet sheet();

    default String type() {
        return sheet().type();
    }

    default Family family() {
        return sheet().family();
    }

    /** One quantity as printed; {@link Range#NONE} if the sheet says nothing. */
    default Range range(DeviceQuantity quantity) {
        return sheet().range(quantity);
    }

    /** Every row of one quantity, under all test conditions. */
    default List<Printed> all(DeviceQuantity quantity) {
        return sheet().all(quantity);
    }

    /** The device record that fits the family of a sheet. */
    static Device of(Sheet sheet) {
        return switch (sheet.family()) {
            case N_JFET, P_JFET -> new JfetData(sheet);
            case NPN, PNP -> new BipolarData(sheet);
            case DUAL_GATE_N_MOSFET -> new DualGateMosfetData(sheet);
            case SILICON_DIODE, SCHOTTKY_DIODE, GERMANIUM_DIODE -> new DiodeData(sheet);
            case TUNING_DIODE -> new TuningDiodeData(sheet);
        };
    }
}
