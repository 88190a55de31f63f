package galena.packet.sheet;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.folder.Supply;
import galena.build.guard.GuardReport;
import galena.build.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The parts of a build as one buys them. */
public final class PartsList {
    /** A percent of a value that moves the carrier by less than this share says nothing about the part. */
    private static final double WORTH_SAYING = 1e-4;

    private PartsList() {}

    /**
     * A line of the list.
     *
     * @param reference the part's name
     * @param value as written in the build
     * @param tolerance as a percentage; "as its sheet" for devices
     * @param type what kind of part, with what the build says of it
     * @param why the builder's own words, from the note or the remark beside the part; what the
     *     sensitivities add; may be empty
     */
    public record Line(String reference, String value, String tolerance, String type, String why) {}

    /** Everything to be fitted or connected, the battery first, in the order of the file. */
    public static List<Line> of(Build build, Optional<GuardReport> guard) {
        List<Line> lines = new ArrayList<>();
        build.supply()
                .ifPresent(s -> lines.add(new Line(
                        Supply.NAME,
                        s instanceof Supply.OfBattery b
                                ? b.type()
                                : ((Supply.OfVoltage) s).voltage().text(),
                        "",
                        s instanceof Supply.OfBattery ? "battery" : "direct-voltage supply",
                        Remark.beside(build, s.place()))));
        for (PartEntry part : build.parts().values())
            lines.add(new Line(part.name(), part.label(), tolerance(part), type(part), why(build, part, guard)));
        return lines;
    }

    private static String why(Build build, PartEntry part, Optional<GuardReport> guard) {
        List<String> words = new ArrayList<>();
        String own = part.values().text("note").orElseGet(() -> Remark.beside(build, part.place()));
        if (!own.isEmpty()) words.add(own);
        guard.ifPresent(g -> g.parts().stream()
                .filter(p -> p.value().startsWith(part.name() + " "))
                .filter(p -> Math.abs(p.perPercent().carrier()) > WORTH_SAYING * g.carrier())
                .findFirst()
                .ifPresent(p -> words.add("one percent of its "
                        + p.value().substring(part.name().length() + 1) + " moves the carrier "
                        + Wording.number(Math.abs(p.perPercent().carrier()), Unit.HERTZ, 2))));
        return String.join("; ", words);
    }

    private static String tolerance(PartEntry part) {
        if (!part.kind().isPassive()) return isDevice(part.kind()) ? "as its sheet" : "";
        String usual = part.values().has("tolerance") ? "" : " (usual)";
        if (part.tolerance() < 1e-3) return Math.round(1e6 * part.tolerance()) + " ppm" + usual;
        return "±" + Wording.number(part.tolerance(), Unit.FRACTION, 1) + usual;
    }

    private static boolean isDevice(PartKind kind) {
        return switch (kind) {
            case DIODE, TUNING_DIODE, NPN, PNP, JFET, MOSFET, DUAL_GATE_MOSFET -> true;
            default -> false;
        };
    }

    private static String type(PartEntry part) {
        List<String> words = new ArrayList<>();
        words.add(part.kind().noun().replaceFirst("^an? ", ""));
        part.values().quantity("tempco").ifPresent(t -> words.add(t.text()));
        part.values().atFrequency("q").ifPresent(q -> words.add("Q " + q.text()));
        if (part.kind() == PartKind.LOOPSTICK) {
            part.values().quantity("turns").ifPresent(t -> words.add(t.text() + " turns"));
            part.values().quantity("rod_length").ifPresent(l -> words.add("rod " + l.text() + " long"));
            part.values().quantity("rod_diameter").ifPresent(d -> words.add(d.text() + " thick"));
        }
        part.position().ifPresent(p -> words.add("set to " + Wording.percent(p)));
        return String.join(", ", words);
    }
}
