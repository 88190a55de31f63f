package galena.packet.sheet;

import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Section;
import java.util.List;
import java.util.Optional;

/** The parts list as a table. */
final class PartsSheet {
    private PartsSheet() {}

    static Optional<Section> of(Findings findings) {
        List<List<String>> rows = PartsList.of(
                        findings.build(), findings.expected().guard())
                .stream()
                .map(p -> List.of(p.reference(), unbroken(p.value()), unbroken(p.tolerance()), p.type(), p.why()))
                .toList();
        return Optional.of(new Section(
                "parts",
                "Parts",
                List.of(new Grid("Parts.", List.of("Part", "Value", "Tolerance", "Type", "Why"), rows))));
    }

    private static String unbroken(String text) {
        return text.replace(' ', '\u00A0');
    }
}
