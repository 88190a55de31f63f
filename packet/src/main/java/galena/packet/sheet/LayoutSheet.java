package galena.packet.sheet;

import galena.build.folder.Stray;
import galena.build.guard.GuardReport;
import galena.build.quantity.Unit;
import galena.packet.chart.RankingSvg;
import galena.packet.guard.SensitivityRanking;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Bullets;
import galena.packet.page.Page.Drawing;
import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** How to lay it out: what the sensitivities say in words, what wiring may take, and what moves the carrier most. */
final class LayoutSheet {
    private static final int BARS = 14;
    private static final int LEADS = 6;

    /** A lead that moves the carrier by less is anybody's, Hz for ten nanohenries. */
    private static final double WORTH_SAYING = 1;

    private static final double PICO = 1e-12;

    private LayoutSheet() {}

    static Optional<Section> of(Findings findings) {
        return findings.expected().guard().map(g -> section(findings, g));
    }

    private static Section section(Findings findings, GuardReport guard) {
        List<Block> blocks = new ArrayList<>();
        if (!guard.advice().isEmpty()) blocks.add(new Bullets(guard.advice()));
        List<List<String>> strays =
                findings.build().strays().stream().map(s -> stray(guard, s)).toList();
        if (!strays.isEmpty())
            blocks.add(new Grid(
                    "Stray budget: what wiring is reckoned to add. Less is trimmed out; more eats the trimmer's reach.",
                    List.of("Between", "Reckoned", "Moves the carrier", "For each pF more"),
                    strays));
        List<List<String>> leads = guard.leads().stream()
                .filter(l -> Math.abs(l.perTenNanohenries().carrier()) > WORTH_SAYING)
                .limit(LEADS)
                .map(l -> List.of(
                        l.part(), l.net(), Wording.signed(l.perTenNanohenries().carrier(), Unit.HERTZ, 2)))
                .toList();
        if (!leads.isEmpty())
            blocks.add(
                    new Grid("Leads to keep shortest.", List.of("Part", "Lead to", "Each centimetre (10 nH)"), leads));
        blocks.add(new Drawing(
                "sensitivities",
                "What moves the carrier most: one percent of a value, a picofarad, a centimetre of lead, ten degrees.",
                RankingSvg.draw(SensitivityRanking.of(guard, BARS))));
        return new Section("layout", "Layout: what to keep short, still and apart", blocks);
    }

    private static List<String> stray(GuardReport guard, Stray stray) {
        Optional<Double> perPicofarad = guard.strays().stream()
                .filter(s -> joins(s, stray))
                .map(s -> s.perPicofarad().carrier())
                .findFirst();
        double picofarads = stray.capacitance().value() / PICO;
        return List.of(
                stray.from() + " and " + stray.to(),
                stray.capacitance().text(),
                perPicofarad
                        .map(h -> Wording.signed(h * picofarads, Unit.HERTZ, 2))
                        .orElse("—"),
                perPicofarad.map(h -> Wording.signed(h, Unit.HERTZ, 2)).orElse("—"));
    }

    private static boolean joins(GuardReport.Stray s, Stray stray) {
        return (s.from().equals(stray.from()) && s.to().equals(stray.to()))
                || (s.from().equals(stray.to()) && s.to().equals(stray.from()));
    }
}
