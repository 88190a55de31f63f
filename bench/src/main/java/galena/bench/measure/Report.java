package galena.bench.measure;

import galena.bench.capture.Understanding;
import java.util.List;
import java.util.Optional;

/**
 * What a capture says.
 *
 * @param name of the capture
 * @param verdict one plain sentence: what is good, what is wrong, the likely cause, what to try first
 * @param figures in the order in which a builder reads them
 * @param findings the gravest first
 * @param understanding how the file was read
 * @param pictures what can be drawn
 */
public record Report(
        String name,
        String verdict,
        List<Figure> figures,
        List<Finding> findings,
        Understanding understanding,
        Pictures pictures) {
    public Report {
        figures = List.copyOf(figures);
        findings = findings.stream()
                .sorted(java.util.Comparator.comparing(Finding::kind))
                .toList();
    }

    /** The figure with this key, if the report has one. */
    public Optional<Figure> figure(String key) {
        return figures.stream().filter(f -> f.key().equals(key)).findFirst();
    }

    /** Whether something of this kind was found. */
    public boolean found(Finding.Kind kind) {
        return findings.stream().anyMatch(f -> f.kind() == kind);
    }
}
