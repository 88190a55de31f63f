package galena.build.fault;

import galena.build.fault.Reading.What;
import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.folder.TestPoint;
import galena.engine.circuit.Circuit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The readings that a builder can take without cutting a wire: supply, carrier, test points, pins of devices. */
final class Readings {
    private Readings() {}

    static List<Reading> of(Build build) {
        List<Reading> readings = new ArrayList<>();
        readings.add(new Reading(What.CARRIER, "", ""));
        if (build.supply().isPresent()) readings.add(new Reading(What.SUPPLY, "", ""));
        for (TestPoint point : build.points().values())
            readings.add(new Reading(What.LEVEL, point.name(), point.name()));
        touchable(build).forEach((net, where) -> readings.add(new Reading(What.DIRECT, net, where)));
        if (build.parts().values().stream().anyMatch(p -> p.kind().isProgramme()))
            audible(build).forEach((net, where) -> readings.add(new Reading(What.AUDIO, net, where)));
        return readings;
    }

    /** Nets with a pin of a device or a test point, and where they are touched. */
    private static Map<String, String> touchable(Build build) {
        Map<String, String> nets = new LinkedHashMap<>();
        for (TestPoint point : build.points().values()) nets.putIfAbsent(point.at(), point.name());
        for (PartEntry part : build.parts().values()) {
            if (!isDevice(part.kind())) continue;
            part.pins().forEach((pin, net) -> nets.putIfAbsent(net, part.name() + " " + pin));
        }
        nets.remove(Circuit.GROUND);
        return nets;
    }

    /** The same and the wipers of presets: where a builder follows a tone. */
    private static Map<String, String> audible(Build build) {
        Map<String, String> nets = new LinkedHashMap<>();
        for (PartEntry part : build.parts().values())
            if (part.kind() == PartKind.PRESET && !part.pin("wiper").equals(Circuit.GROUND))
                nets.putIfAbsent(part.pin("wiper"), part.name() + " wiper");
        touchable(build).forEach(nets::putIfAbsent);
        return nets;
    }

    static boolean isDevice(PartKind kind) {
        return switch (kind) {
            case DIODE, TUNING_DIODE, NPN, PNP, JFET, MOSFET, DUAL_GATE_MOSFET -> true;
            default -> false;
        };
    }
}
