package galena.packet.sheet;

import galena.build.folder.LogEntry;
import galena.build.quantity.Quantity;
import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Section;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What was read on the bench, as the log has it. */
final class ResultsSheet {
    private ResultsSheet() {}

    static Optional<Section> of(Findings findings) {
        List<LogEntry> log = findings.folder().log();
        if (log.isEmpty()) return Optional.empty();
        List<List<String>> rows = log.stream()
                .map(e -> List.of(
                        e.what().name().toLowerCase(Locale.ROOT).replace('_', ' '),
                        e.value().text(),
                        e.uncertainty().map(Quantity::text).orElse(""),
                        e.at().orElse(""),
                        e.when().orElse(""),
                        e.how().orElse("")))
                .toList();
        Grid grid = new Grid("The bench log.", List.of("Reading", "Value", "Uncertainty", "At", "When", "How"), rows);
        return Optional.of(new Section("results", "What was measured", List.of(grid)));
    }
}
