package galena.packet.sheet;

import galena.packet.page.Page.Block;
import galena.packet.page.Page.Drawing;
import galena.packet.page.Page.Paragraph;
import galena.packet.page.Page.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The schematic, and what it leaves out. */
final class SchematicSheet {
    private SchematicSheet() {}

    static Optional<Section> of(Findings findings) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Drawing(
                "schematic", "Schematic. Names in italics are nets; circles are test points.", findings.schematic()));
        if (!findings.build().strays().isEmpty()) {
            String strays = String.join(
                    ", ",
                    findings.build().strays().stream()
                            .map(s -> s.capacitance().text() + " from " + s.from() + " to " + s.to())
                            .toList());
            blocks.add(new Paragraph("Not drawn, but reckoned with: strays of " + strays + "."));
        }
        return Optional.of(new Section("schematic", "Schematic", blocks));
    }
}
