package galena.packet.sheet;

import galena.build.folder.Intent;
import galena.build.predict.Prediction;
import galena.build.predict.Prediction.Judgement;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Paragraph;
import galena.packet.page.Page.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the build is for, and whether it will do it. */
final class VerdictSheet {
    private VerdictSheet() {}

    static Optional<Section> of(Findings findings) {
        List<Block> blocks = new ArrayList<>();
        purpose(findings.build().intent()).ifPresent(words -> blocks.add(new Paragraph(words)));
        if (findings.prediction().running() instanceof Prediction.Silent silent)
            blocks.add(new Paragraph("As it stands in the file it does not oscillate: " + silent.reason() + "."));
        List<List<String>> rows = new ArrayList<>();
        for (Judgement j : findings.prediction().judgements())
            rows.add(List.of(
                    j.item(),
                    Wording.minus(j.wanted()),
                    Wording.both(j.found()),
                    j.outcome().toString(),
                    j.remark()));
        if (!rows.isEmpty())
            blocks.add(new Grid(
                    "Wanted and predicted. The window in brackets holds 95 % of builds with parts inside their tolerances.",
                    List.of("What", "Wanted", "Predicted", "Verdict", "Remark"), rows));
        return blocks.isEmpty() ? Optional.empty() : Optional.of(new Section("verdict", "What it is for", blocks));
    }

    private static Optional<String> purpose(Intent intent) {
        List<String> parts = new ArrayList<>();
        intent.carrier().ifPresent(c -> parts.add("a carrier on " + c.text()));
        intent.distance().ifPresent(d -> parts.add("heard at " + d.text()));
        intent.modulation().ifPresent(m -> parts.add("modulated to " + m.text()));
        intent.programme()
                .ifPresent(p -> parts.add("by a programme of " + p.level().text() + " peak from "
                        + p.band().text().replace("..", " to ")));
        intent.runtime().ifPresent(r -> parts.add("for " + r.text() + " on one battery"));
        return parts.isEmpty() ? Optional.empty() : Optional.of("Wanted: " + String.join(", ", parts) + ".");
    }
}
