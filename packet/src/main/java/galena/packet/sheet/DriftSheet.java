package galena.packet.sheet;

import galena.build.drift.DriftReport;
import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import galena.packet.chart.ChartSvg;
import galena.packet.drift.DriftChart;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Bullets;
import galena.packet.page.Page.Drawing;
import galena.packet.page.Page.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** How it wanders with the battery and with heat. */
final class DriftSheet {
    private DriftSheet() {}

    static Optional<Section> of(Findings findings) {
        return findings.outlook().drift().filter(d -> d.run().size() > 1).map(DriftSheet::section);
    }

    private static Section section(DriftReport report) {
        List<Block> blocks = new ArrayList<>();
        List<String> items = new ArrayList<>();
        items.add("One volt more of supply moves the carrier " + Wording.signed(report.pushing(), Unit.HERTZ, 2) + ".");
        add(
                items,
                "Off its channel by " + Wording.number(report.channel(), Unit.HERTZ, 2) + " after ",
                report.leaves());
        add(items, "Less than nine tenths of the depth, or distorted, after ", report.loses());
        add(items, "Stops oscillating after ", report.stops());
        add(items, "Battery at its end after ", report.spent());
        blocks.add(new Bullets(items));
        blocks.add(new Drawing(
                "drift",
                "Carrier against hours from switch-on as the battery runs down, at 25 °C, typical parts.",
                ChartSvg.draw(DriftChart.carrier(report))));
        if (report.temperatures().size() > 1)
            blocks.add(new Drawing(
                    "drift-temperature",
                    "Carrier against temperature, everything else as at switch-on, typical parts.",
                    ChartSvg.draw(DriftChart.temperature(report))));
        return new Section("drift", "How it wanders", blocks);
    }

    private static void add(List<String> items, String words, Figure figure) {
        if (figure instanceof Figure.Known k) items.add(words + Wording.both(k) + ".");
        else if (figure instanceof Figure.Missing m)
            items.add(words.replaceFirst(" after $", "") + ": " + m.reason() + ".");
    }
}
