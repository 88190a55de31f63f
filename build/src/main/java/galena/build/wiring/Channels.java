package galena.build.wiring;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.engine.part.Polarity;

/** Which channel a field-effect transistor of a build has. */
public final class Channels {
    private Channels() {}

    /** Whether it is a p-channel device: the library's word for its type, else the build's, else n. */
    public static boolean isP(Build build, PartEntry part) {
        if (part.kind() != PartKind.JFET && part.kind() != PartKind.MOSFET) return false;
        return new DeviceModels(build.devices()).channel(part) == Polarity.P;
    }
}
