package galena.packet.sheet;

import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.folder.Supply;
import galena.build.quantity.Unit;
import java.util.ArrayList;
import java.util.List;

/** The parts of a build as one buys them. */
public final class PartsList {
    private PartsList() {}

    /**
     * A line of the list.
     *
     * @param reference the part's name
     * @param value as written in the build
     * @param tolerance as a percentage; "as its sheet" for devices
     * @param type what kind of part
     * @param why the builder's own words, from the note or the remark beside the part, and what follows from what it does; may be
     *     empty
     * @param instead what may stand in its place; may be empty
     */
    public record Line(String reference, String value, String tolerance, String type, String why, String instead) {}

    /** Everything to be fitted or connected, the battery first, in the order of the file. */
    public static List<Line> of(Findings findings) {
        List<Line> lines = new ArrayList<>();
        findings.build().supply().ifPresent(s -> lines.add(supply(findings, s)));
        PartKinds kinds = new PartKinds(findings);
        Instead instead = new Instead(findings);
        for (PartEntry part : findings.build().parts().values())
            lines.add(new Line(
                    part.name(),
                    part.label(),
                    tolerance(part),
                    kinds.kind(part),
                    why(findings, kinds, part),
                    instead.of(part)));
        return lines;
    }

    private static Line supply(Findings findings, Supply s) {
        String value = s instanceof Supply.OfBattery b
                ? b.type()
                : ((Supply.OfVoltage) s).voltage().text();
        String type = s instanceof Supply.OfBattery ? "battery" : "direct-voltage supply";
        return new Line(Supply.NAME, value, "", type, Remark.beside(findings.build(), s.place()), "");
    }

    private static String why(Findings findings, PartKinds kinds, PartEntry part) {
        List<String> words = new ArrayList<>();
        String own = part.values().text("note").orElseGet(() -> Remark.beside(findings.build(), part.place()));
        if (!own.isEmpty()) words.add(own);
        words.addAll(kinds.why(part));
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
            case DIODE, TUNING_DIODE, NPN, PNP, JFET, MOSFET, DUAL_GATE_MOSFET, OPAMP -> true;
            default -> false;
        };
    }
}
