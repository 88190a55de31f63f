package galena.build.wiring;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.source.Nearest;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.engine.circuit.Circuit;
import galena.engine.circuit.Fault;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Finds the place in the file for a fault that the engine found in the circuit. */
final class FaultPlaces {
    /** What builders call the reference when they don't call it ground. */
    private static final List<String> GROUND_WORDS =
            List.of("gnd", "earth", "0v", "common", "chassis", "mass", "masse");

    private final Build build;
    private final Map<String, String> origins;

    FaultPlaces(Build build, Map<String, String> origins) {
        this.build = build;
        this.origins = origins;
    }

    Problem problem(Fault fault) {
        String rule = sentence(fault.kind().remedy());
        if (fault.kind() == Fault.Kind.NO_GROUND) return noGround(rule);
        if (fault.kind() == Fault.Kind.LONE_PIN) return lonePin(fault, rule);
        String path = fault.parts().isEmpty() ? "" : path(fault.parts().get(0));
        return new Problem(
                build.place(path), path, subject(fault) + ": " + fault.kind().rule(), rule);
    }

    private Problem noGround(String rule) {
        Optional<String> meant = build.nets().stream()
                .filter(net -> GROUND_WORDS.contains(net.toLowerCase(Locale.ROOT)))
                .findFirst()
                .or(() -> Nearest.to(Circuit.GROUND, build.nets()));
        Place place = meant.map(build::placeOfNet).orElse(build.place("parts"));
        return new Problem(
                place,
                "parts",
                "no pin is joined to ground",
                rule,
                meant.map(net -> "Write ground where " + net + " stands."));
    }

    private Problem lonePin(Fault fault, String rule) {
        String net = fault.nets().get(0);
        String path = path(fault.parts().get(0));
        for (PartEntry part : build.parts().values())
            for (String pin : part.kind().pins()) if (part.pin(pin).equals(net)) path = part.path() + "." + pin;
        List<String> others = new ArrayList<>(build.nets());
        others.remove(net);
        return new Problem(
                build.place(path),
                path,
                "no other pin is joined to the net \"" + net + '"',
                rule,
                Nearest.to(net, others).map(near -> "Nearest: " + near));
    }

    private String path(String enginePart) {
        return origins.getOrDefault(enginePart, "");
    }

    private static String subject(Fault fault) {
        String parts = String.join(", ", fault.parts());
        String nets = (fault.nets().size() == 1 ? "net " : "nets ") + String.join(", ", fault.nets());
        if (fault.nets().isEmpty()) return parts;
        return parts.isEmpty() ? nets : nets + " of " + parts;
    }

    private static String sentence(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + ".";
    }
}
