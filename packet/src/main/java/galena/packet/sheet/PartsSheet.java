package galena.packet.sheet;

import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Paragraph;
import galena.packet.page.Page.Section;
import java.util.List;
import java.util.Optional;

/** The parts list as a table. */
final class PartsSheet {
    private PartsSheet() {}

    static Optional<Section> of(Findings findings) {
        List<List<String>> rows = PartsList.of(findings).stream()
                .map(p -> List.of(
                        p.reference(), unbroken(p.value()), unbroken(p.tolerance()), p.type(), p.why(), p.instead()))
                .toList();
        Grid grid = new Grid(
                "Parts, also in parts.csv. What may stand instead was solved for; what changes with it is told under"
                        + " Substitutes.",
                List.of("Part", "Value", "Tolerance", "Type", "Why", "Instead"),
                rows);
        Paragraph pins =
                new Paragraph("Devices of one type number come with different pins from different makers: take them"
                        + " from the sheet of the one in hand, and its limits with them.");
        return Optional.of(new Section("parts", "Parts", List.of(grid, pins)));
    }

    private static String unbroken(String text) {
        return text.replace(' ', '\u00A0');
    }
}
