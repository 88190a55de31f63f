package galena.packet.sheet;

import galena.bench.log.Beside;
import galena.build.figure.Figure;
import galena.build.folder.LogEntry;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Paragraph;
import galena.packet.page.Page.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What was read on the bench, each reading beside its prediction under the circumstances it was taken in. */
final class ResultsSheet {
    private ResultsSheet() {}

    static Optional<Section> of(Findings findings) {
        List<Beside> results = findings.results();
        if (results.isEmpty()) return Optional.empty();
        List<Block> blocks = new ArrayList<>();
        long apart = results.stream()
                .filter(b -> b.agrees().filter(a -> !a).isPresent())
                .count();
        long told = results.stream().filter(b -> b.agrees().isPresent()).count();
        blocks.add(new Paragraph(
                apart == 0
                        ? "All " + told + " readings with a predicted window lie in it, their uncertainty counted."
                        : apart + " of " + told
                                + " readings with a predicted window lie outside it, marked \"apart\" below: what"
                                + " was built differs there from what was reckoned."));
        blocks.add(new Grid(
                "Measured and predicted; each prediction with the probe, the adjustments, the temperature and the supply noted"
                        + " with its reading.",
                List.of("Reading", "At", "Measured", "Predicted", "", "When"),
                results.stream().map(ResultsSheet::row).toList()));
        List<List<String>> how = results.stream()
                .map(Beside::reading)
                .filter(r -> r.how().isPresent())
                .map(r -> List.of(
                        r.what().inWords(),
                        r.at().orElse(""),
                        Wording.minus(r.how().get().replace(" -", " −"))))
                .distinct()
                .toList();
        if (!how.isEmpty()) blocks.add(new Grid("How it was measured.", List.of("Reading", "At", "How"), how));
        return Optional.of(new Section("results", "What was measured", blocks));
    }

    private static List<String> row(Beside beside) {
        LogEntry reading = beside.reading();
        String measured = Wording.minus(reading.value().text())
                + reading.uncertainty().map(u -> " ± " + u.text()).orElse("");
        return List.of(
                reading.what().inWords(),
                reading.at().orElse(""),
                measured,
                predicted(beside.predicted()),
                beside.agrees().map(fits -> fits ? "fits" : "apart").orElse(""),
                reading.when().orElse(""));
    }

    private static String predicted(Figure figure) {
        if (!(figure instanceof Figure.Known known)) return figure.text();
        boolean typical = known.basis().contains("typical");
        return typical ? Wording.value(known) + " with typical parts" : Wording.both(known);
    }
}
