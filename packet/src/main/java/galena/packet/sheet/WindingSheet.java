package galena.packet.sheet;

import galena.build.figure.Figure;
import galena.build.folder.PartEntry;
import galena.build.quantity.Unit;
import galena.build.winding.Coil;
import galena.build.winding.WindingPlan;
import galena.build.winding.WindingPlan.Correction;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Bullets;
import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Heading;
import galena.packet.page.Page.Paragraph;
import galena.packet.page.Page.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** For each coil on what and with what it is wound, what it must measure, and what to do when it measures something else. */
final class WindingSheet {
    /** Above this two coils are one transformer. */
    private static final double ONE_CORE = 0.1;

    private WindingSheet() {}

    static Optional<Section> of(Findings findings) {
        if (findings.windings().isEmpty() && findings.unwound().isEmpty()) return Optional.empty();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Paragraph(
                "Measure each coil before it goes in, in its place on the rod and away from metal. Leave a hand's"
                        + " width of wire at both ends; a turn is counted each time the wire passes the same side."));
        for (WindingPlan plan : findings.windings()) coil(findings, plan, blocks);
        if (!findings.windings().isEmpty()) blocks.add(corrections(findings.windings()));
        findings.unwound().forEach(reason -> blocks.add(new Paragraph(reason + ".")));
        couplings(findings, blocks);
        return Optional.of(new Section("coils", "Winding the coils", blocks));
    }

    private static void coil(Findings findings, WindingPlan plan, List<Block> blocks) {
        PartEntry entry = findings.build().part(plan.part()).orElseThrow();
        Coil coil = plan.coil();
        blocks.add(new Heading(
                plan.part() + ", " + entry.label() + " ±" + Wording.number(entry.tolerance(), Unit.FRACTION, 1)));
        List<String> items = new ArrayList<>();
        items.add((plan.asBuilt() ? "On what: " : "Proposed: ")
                + plan.former()
                + entry.values()
                        .quantity("permeability")
                        .map(p -> ", material of permeability " + p.text())
                        .orElse("")
                + (plan.asBuilt() ? "." : "; any other former will do if the inductance comes out."));
        items.add("Turns: " + turns(plan.turns()) + " of enamelled copper, " + coil.wire()
                + ", side by side in " + (coil.layers() == 1 ? "one layer" : coil.layers() + " layers") + ", "
                + Wording.number(coil.windingLength(), Unit.METRE, 2) + " long"
                + (plan.turns() == coil.turns()
                        ? ""
                        : "; reckoned for this inductance: " + Wording.number(coil.exactTurns(), Unit.NUMBER, 3))
                + ".");
        items.add("Wire: " + Wording.number(coil.wireLength(), Unit.METRE, 2) + " and the ends.");
        if (plan.asBuilt() && entry.values().has("rod_length"))
            items.add(
                    "Place: the winding's middle " + position(entry) + "; towards the rod's end the inductance falls.");
        items.add(
                "Should measure " + Wording.number(coil.wanted(), Unit.HENRY, 3) + "; these turns are reckoned to give "
                        + Wording.both(coil.inductance()) + ". It resonates on the carrier with "
                        + Wording.number(coil.tuning(), Unit.FARAD, 3) + " in all, strays counted.");
        q(plan, coil).ifPresent(items::add);
        blocks.add(new Bullets(items));
    }

    private static String turns(double turns) {
        return turns == Math.rint(turns) ? String.valueOf((long) turns) : Wording.number(turns, Unit.NUMBER, 3);
    }

    private static String position(PartEntry entry) {
        double at = entry.values().si("position", 0);
        return at == 0
                ? "at the middle of the rod"
                : Wording.number(Math.abs(at), Unit.METRE, 2) + " from the middle of the rod";
    }

    private static Optional<String> q(WindingPlan plan, Coil coil) {
        if (plan.wantedQ().isEmpty()) return Optional.empty();
        double wanted = plan.wantedQ().getAsDouble();
        String needed = "Q at the carrier: the build reckons with " + Wording.number(wanted, Unit.NUMBER, 2);
        if (!(coil.q() instanceof Figure.Known q))
            return Optional.of(
                    needed + "; of this winding it is " + coil.q().text().replaceFirst("\\. Name a grade.*", "") + ".");
        String more = q.low() > wanted
                ? ". More is no harm to a tank that starts anyway, but it swings higher"
                : q.high() < wanted ? ". Thicker wire or a larger former is needed" : "";
        return Optional.of(needed + "; this winding reckons to " + Wording.both(q) + more + ".");
    }

    private static Grid corrections(List<WindingPlan> plans) {
        List<String> head = new ArrayList<>(List.of("Coil", "One turn is"));
        for (Correction c : plans.get(0).corrections())
            head.add("Reads " + Wording.signed(c.read() - 1, Unit.FRACTION, 1));
        List<List<String>> rows = new ArrayList<>();
        for (WindingPlan plan : plans) {
            double one = (plan.coil().oneMore() - plan.coil().oneLess()) / 2;
            List<String> row = new ArrayList<>(List.of(
                    plan.part(),
                    Wording.number(one, Unit.HENRY, 2) + " ("
                            + Wording.number(one / plan.coil().wanted(), Unit.FRACTION, 2) + ")"));
            for (Correction c : plan.corrections())
                row.add((c.turns() > 0 ? "add " : "take off ") + quarter(Math.abs(c.turns())));
            rows.add(row);
        }
        return new Grid(
                "When the inductance reads different: turns to add or to take off. Less than a turn is made up by spreading the"
                        + " turns, on a rod by moving the winding towards its end.",
                head,
                rows);
    }

    /** To a quarter turn: finer nobody winds. */
    private static String quarter(double turns) {
        double rounded = Math.round(4 * turns) / 4.0;
        long whole = (long) rounded;
        String part = List.of("", "¼", "½", "¾").get((int) Math.round(4 * (rounded - whole)));
        if (whole == 0) return part.isEmpty() ? "nothing" : part;
        return whole + part;
    }

    private static void couplings(Findings findings, List<Block> blocks) {
        List<String> items = findings.build().couplings().stream()
                .map(c -> c.first() + " and " + c.second() + ": k = " + c.k().text()
                        + (Math.abs(c.k().value()) >= ONE_CORE
                                ? ". Wind them on one former in the same sense; the first pins named in the build are like ends."
                                : ". Keep them apart and at right angles."))
                .toList();
        if (!items.isEmpty()) blocks.add(new Bullets(items));
    }
}
