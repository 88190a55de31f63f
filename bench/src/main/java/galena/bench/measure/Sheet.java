package galena.bench.measure;

import galena.bench.capture.Understanding;
import galena.signal.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Gathers figures and findings while a capture is measured. */
final class Sheet {
    private final String quantity;
    private final List<Figure> figures = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();
    private Pictures pictures = Pictures.none();

    Sheet(String quantity) {
        this.quantity = quantity;
    }

    void add(String key, String label, Estimate value, String unit, String how) {
        put(key, label, new Reading.Known(value), unit, quantity, how);
    }

    /** A figure of another quantity than the capture as a whole. */
    void addOf(String quantityOfIt, String key, String label, Estimate value, String unit, String how) {
        put(key, label, new Reading.Known(value), unit, quantityOfIt, how);
    }

    /** A ratio in decibels: a limit when its lower end is zero. */
    void addRatio(String key, String label, Estimate ratio, String unit, String how) {
        Reading reading = ratio.low() > 0 && ratio.value() > 0
                ? new Reading.Known(ratio.map(Sheet::decibels))
                : new Reading.Below(decibels(Math.max(ratio.high(), 1e-12)));
        put(key, label, reading, unit, quantity, how);
    }

    /** A share in per cent: a limit when its lower end is zero. */
    void addShare(String key, String label, Estimate share, String how) {
        Estimate percent = share.map(x -> 100 * x);
        Reading reading = percent.low() > 0 || percent.high() <= 0
                ? new Reading.Known(percent)
                : new Reading.Below(percent.high());
        put(key, label, reading, "%", quantity, how);
    }

    void miss(String key, String label, String unit, String reason) {
        put(key, label, new Reading.Missing(reason), unit, quantity, "");
    }

    private void put(String key, String label, Reading reading, String unit, String of, String how) {
        figures.add(new Figure(key, label, reading, unit, of, how));
    }

    void find(Finding.Kind kind, String sentence) {
        findings.add(new Finding(kind, sentence));
    }

    void draw(Pictures drawn) {
        pictures = drawn;
    }

    boolean found(Finding.Kind kind) {
        return findings.stream().anyMatch(f -> f.kind() == kind);
    }

    /** The estimate under a key, if it is known. */
    Optional<Estimate> known(String key) {
        return figures.stream()
                .filter(f -> f.key().equals(key) && f.reading() instanceof Reading.Known)
                .map(f -> ((Reading.Known) f.reading()).estimate())
                .findFirst();
    }

    List<Finding> findings() {
        return findings;
    }

    static double decibels(double ratio) {
        return 20 * Math.log10(ratio);
    }

    Report report(String name, Understanding understanding) {
        return new Report(name, Verdict.of(this), figures, findings, understanding, pictures);
    }
}
