package galena.packet.sheet;

import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import galena.build.reach.Hearing;
import galena.build.reach.Reach;
import galena.build.reach.Reaching;
import galena.build.reach.Rules;
import galena.build.reach.Standing;
import galena.build.reach.Surroundings;
import galena.packet.chart.ChartSvg;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Caution;
import galena.packet.page.Page.Drawing;
import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Paragraph;
import galena.packet.page.Page.Section;
import galena.packet.reach.FieldChart;
import galena.packet.reach.ListeningChart;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** How far it is heard in a residential street, and how its field stands to the figures held. */
final class ReachSheet {
    private ReachSheet() {}

    static Optional<Section> of(Findings findings) {
        if (!(Reaching.of(findings.build(), findings.prediction(), Surroundings.RESIDENTIAL) instanceof Reach reach))
            return Optional.empty();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Caution(reach.caution()));
        if (reach.rules() instanceof Rules.Judged judged) {
            List<List<String>> rows = new ArrayList<>();
            for (Rules.Route route : judged.routes())
                for (Rules.Line line : route.lines()) if (isTold(line)) rows.add(row(route, line));
            if (!rows.isEmpty())
                blocks.add(new Grid(
                        "Field against the figures held for " + judged.region()
                                + "; harmonics well inside are left out. Unverified: recalled, not read.",
                        List.of("Route", "What", "Found", "Limit", "Standing", "Remark"),
                        rows));
        }
        if (reach.rules() instanceof Rules.NotHeld none)
            blocks.add(new Paragraph(
                    "Rules of " + none.region() + ": not held, " + none.reason() + ". Read: " + none.check() + "."));
        if (!reach.hearing().isEmpty()) {
            blocks.add(hearing(reach));
            if (ListeningChart.hasLines(reach))
                blocks.add(new Drawing(
                        "listening",
                        "Audio over noise with distance, over noise " + reach.surroundings() + ".",
                        ChartSvg.draw(ListeningChart.of(reach))));
        }
        blocks.add(new Drawing(
                "field", "Field of the carrier with distance, unmodulated.", ChartSvg.draw(FieldChart.of(reach))));
        reach.notes().forEach(note -> blocks.add(new Paragraph(note)));
        return Optional.of(new Section("reach", "How far it is heard, and the limits", blocks));
    }

    private static boolean isTold(Rules.Line line) {
        return !line.outOfBand() || line.standing() != Standing.WITHIN;
    }

    private static List<String> row(Rules.Route route, Rules.Line line) {
        String limit =
                line.limit().map(l -> Wording.number(l.value(), l.unit(), 3)).orElse("")
                        + line.distance()
                                .map(d -> " at " + Wording.number(d, Unit.METRE, 3))
                                .orElse("")
                        + (line.verified() ? "" : ", unverified");
        return List.of(
                route.name(),
                line.subject(),
                line.found().map(Wording::both).orElse("open"),
                limit,
                line.standing().toString(),
                line.remark());
    }

    private static Grid hearing(Reach reach) {
        List<List<String>> rows = new ArrayList<>();
        for (Hearing h : reach.hearing())
            rows.add(List.of(
                    h.kind(),
                    h.wanted()
                            .map(w -> w.silent() ? w.sound() : w.sound() + ", " + Wording.both(w.signalToNoise()))
                            .orElse("—"),
                    Wording.both(h.pleasant()),
                    h.usable() instanceof Figure.Known k ? Wording.both(k) : "—"));
        String at = reach.wanted()
                .map(d -> "At " + Wording.number(d, Unit.METRE, 3))
                .orElse("Where wanted");
        return new Grid(
                "What classes of set make of it; yours may differ by 10 dB.",
                List.of("Set", at, "Pleasant to", "Speech to"),
                rows);
    }
}
