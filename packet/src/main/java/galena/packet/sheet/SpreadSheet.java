package galena.packet.sheet;

import galena.build.figure.Figure;
import galena.build.spread.Drawn;
import galena.build.spread.Drawn.Quantity;
import galena.build.spread.SpreadReport;
import galena.packet.chart.ChartSvg;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Bullets;
import galena.packet.page.Page.Drawing;
import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Paragraph;
import galena.packet.page.Page.Section;
import galena.packet.spread.SpreadChart;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** How copies of the build differ from one another, and how many do what is wanted. */
final class SpreadSheet {
    private static final List<Quantity> DRAWN = List.of(Quantity.AS_SET, Quantity.OUTPUT, Quantity.AUDIO);
    private static final int MOST = 4;

    private SpreadSheet() {}

    static Optional<Section> of(Findings findings) {
        return findings.outlook().spread().map(report -> section(findings, report));
    }

    private static Section section(Findings findings, SpreadReport report) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Paragraph(
                "Of " + report.count() + " copies drawn over tolerances, devices, −10 to +50 °C and a battery"
                        + " from fresh to nearly flat, each trimmed to the channel, " + Wording.both(report.yield())
                        + " meet the intent."));
        List<String> failures = new ArrayList<>();
        report.failures().forEach((reason, count) -> failures.add(reason + ": " + count + " of " + report.count()));
        if (!failures.isEmpty()) blocks.add(new Bullets(failures));
        List<List<String>> rows = new ArrayList<>();
        for (Drawn.Quantity quantity : Drawn.Quantity.values()) {
            Figure.Known window = report.windows().get(quantity);
            if (window != null) rows.add(List.of(quantity.toString(), Wording.value(window), Wording.window(window)));
        }
        blocks.add(new Grid("What the copies come to.", List.of("Quantity", "Middle copy", "95 % lie within"), rows));
        for (Quantity quantity : DRAWN)
            if (SpreadChart.canShow(report, quantity))
                blocks.add(new Drawing(
                        SpreadChart.fileName(quantity),
                        "Copies by their " + quantity + ".",
                        ChartSvg.draw(SpreadChart.of(
                                report, quantity, findings.build().intent()))));
        List<String> tighten = report.tighten().stream()
                .limit(MOST)
                .map(t -> t.what() + " halved: " + Wording.percent(t.yield()) + " would meet the intent")
                .toList();
        if (!tighten.isEmpty()) {
            blocks.add(new Paragraph("Which tolerance to tighten first:"));
            blocks.add(new Bullets(tighten));
        }
        return new Section("spread", "How copies differ", blocks);
    }
}
