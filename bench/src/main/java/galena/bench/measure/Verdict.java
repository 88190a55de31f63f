package galena.bench.measure;

import java.util.Comparator;
import java.util.Optional;

/** The one sentence above the figures: what is good, then the gravest thing wrong with its cause and what to try first. */
final class Verdict {
    private Verdict() {}

    static String of(Sheet sheet) {
        Optional<String> good = Judgement.good(sheet);
        Optional<Finding> worst = sheet.findings().stream()
                .filter(f -> f.kind().compareTo(Finding.Kind.TOO_FEW_SAMPLES) < 0)
                .min(Comparator.comparing(Finding::kind));
        if (worst.isEmpty())
            return good.map(g -> g + "; nothing wrong was found.").orElse("Measured; nothing wrong was found.");
        String wrong = worst.get().sentence();
        if (good.isEmpty()) return wrong + ".";
        return good.get() + ", but: " + Character.toLowerCase(wrong.charAt(0)) + wrong.substring(1) + ".";
    }
}
