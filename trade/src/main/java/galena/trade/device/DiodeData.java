package galena.trade.device;

import static galena.trade.device.DeviceQuantity.FORWARD_VOLTAGE;

import java.util.List;

/** A silicon, Schottky or germanium diode. */
public record DiodeData(Sheet sheet) implements Device {
    public DiodeData {
        if (sheet.family() != Family.SILICON_DIODE
                && sheet.family() != Family.SCHOTTKY_DIODE
                && sheet.family() != Family.GERMANIUM_DIODE) {
            throw new IllegalArgumentException(sheet.type() + " is no diode for signals");
        }
    }

    /** Every printed forward voltage, each at its own current IF. */
    public List<Printed> forwardVoltages() {
        return all(FORWARD_VOLTAGE);
    }

    /** Parameters of the typical device. */
    public ModelAnswer<DiodeModel> typical() {
        return new DiodeDerivation(this).typical();
    }
}
