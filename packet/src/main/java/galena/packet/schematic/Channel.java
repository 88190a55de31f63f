package galena.packet.schematic;

import galena.build.folder.PartEntry;
import galena.trade.device.DeviceLibrary;
import galena.trade.device.Family;
import galena.trade.device.Lookup;

/** Which channel a field-effect transistor has: the library's word for a type, else the build's, else n. */
final class Channel {
    private Channel() {}

    static boolean isP(PartEntry part, DeviceLibrary devices) {
        if (part.type().isPresent() && devices.find(part.type().get()) instanceof Lookup.Known known)
            return known.device().family() == Family.P_JFET;
        return part.values().text("channel").orElse("n").equals("p");
    }
}
