package galena.packet.sheet;

import galena.build.folder.Supply;
import galena.build.rules.LocalRules;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Bullets;
import galena.packet.page.Page.Caution;
import galena.packet.page.Page.Paragraph;
import galena.packet.page.Page.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Cautions, and where the local rules stand. */
final class CautionSheet {
    private CautionSheet() {}

    static Optional<Section> of(Findings findings) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(
                new Caution(
                        "Transmitting is regulated everywhere. Whether this may be switched on, where, how strong and"
                                + " with which aerial is for your regulator and for licensed practice to say, not for this sheet."));
        LocalRules.of(findings.build().intent())
                .ifPresent(r -> blocks.add(new Paragraph("Region of this build: " + r.region()
                        + ". Read the rules in force: " + r.check() + ". What is held here: " + r.note() + ".")));
        List<String> items = new ArrayList<>();
        if (findings.build().supply().filter(Supply.OfBattery.class::isInstance).isPresent())
            items.add(
                    "Batteries: use a holder and a fuse or a current limit, never short the cells, charge them outside the build.");
        else
            items.add(
                    "Supply: use one that is isolated from the mains and limits its current; nothing here is mains-proof.");
        items.add("Soldering: ventilate, protect your eyes, keep the iron in its stand.");
        items.add("Headphones: start with the volume at zero; a badly tuned receiver can shriek.");
        blocks.add(new Bullets(items));
        return Optional.of(new Section("cautions", "Before you start", blocks));
    }
}
