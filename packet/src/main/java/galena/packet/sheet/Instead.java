package galena.packet.sheet;

import galena.build.folder.PartEntry;
import galena.build.quantity.Unit;
import galena.build.substitute.DeviceChoice;
import galena.build.substitute.Survey;
import galena.build.substitute.ValueRange;
import java.util.List;
import java.util.Optional;

/** What may stand in place of a part, in a line. */
final class Instead {
    /** More types than these are in the table of substitutes. */
    private static final int NAMED = 4;

    private final Optional<Survey> substitutes;

    Instead(Findings findings) {
        substitutes = findings.outlook().substitutes();
    }

    String of(PartEntry part) {
        return substitutes
                .map(r -> part.type().isPresent() ? devices(r, part) : values(r, part))
                .orElse("");
    }

    private static String devices(Survey all, PartEntry part) {
        List<String> types = all.devices().stream()
                .filter(d -> d.parts().contains(part.name()) && d.fits())
                .map(DeviceChoice::type)
                .toList();
        if (types.isEmpty()) return "";
        return String.join(", ", types.subList(0, Math.min(NAMED, types.size())))
                + (types.size() > NAMED ? " and " + (types.size() - NAMED) + " more" : "");
    }

    private static String values(Survey all, PartEntry part) {
        return all.values().stream()
                .filter(v -> v.part().equals(part.name()))
                .findFirst()
                .map(v -> range(v) + v.pair().map(p -> "; " + pair(p, v.unit())).orElse(""))
                .orElse("");
    }

    /** "39 kΩ to 100 kΩ" */
    static String range(ValueRange v) {
        if (v.low() == v.high()) return "no other value";
        return Wording.number(v.low(), v.unit(), 2) + " to " + Wording.number(v.high(), v.unit(), 2);
    }

    /** "100 pF and 22 pF in parallel" */
    static String pair(ValueRange.Pair pair, Unit unit) {
        return Wording.number(pair.first(), unit, 2) + " and " + Wording.number(pair.second(), unit, 2)
                + (pair.parallel() ? " in parallel" : " in series") + " ("
                + (pair.error() == 0 ? "exact" : Wording.signed(pair.error(), Unit.FRACTION, 2)) + ")";
    }
}
