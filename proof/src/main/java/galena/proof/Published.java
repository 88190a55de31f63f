package galena.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;

/**
 * One outside source held against what Galena finds. Each comparison asserts, and leaves a line for the validation
 * page when the system property {@code galena.validation} names a folder.
 *
 * <pre>{@code
 * Published.source("trade", Kind.TABLE, "H. Nagaoka, J. Coll. Sci. Tokyo 27 (1909), table of K")
 *     .matches("K at diameter/length 0.5", 0.818136, CurrentSheet.nagaoka(0.5), HALF_OF_SIXTH_DECIMAL);
 * }</pre>
 */
public final class Published {
    private final String module;
    private final Kind kind;
    private final String source;

    private Published(String module, Kind kind, String source) {
        this.module = module;
        this.kind = kind;
        this.source = source;
    }

    /**
     * @param module the module under test
     * @param kind what stands behind the expected values
     * @param source author, title, year, table or equation; for {@link Kind#COMMON_PRACTICE} the fact in words
     */
    public static Published source(String module, Kind kind, String source) {
        return new Published(module, kind, source);
    }

    /** Asserts |found − expected| ≤ tolerance, all in the unit that {@code quantity} names. */
    public Published matches(String quantity, double expected, double found, double tolerance) {
        note(quantity, number(expected), found, Math.abs(found - expected), tolerance, "");
        assertThat(found).as("%s [%s]", quantity, source).isCloseTo(expected, within(tolerance));
        return this;
    }

    /** Asserts |found/expected − 1| ≤ tolerance. */
    public Published matchesRelative(String quantity, double expected, double found, double tolerance) {
        double error = Math.abs(found / expected - 1);
        note(quantity, number(expected), found, error, tolerance, " relative");
        assertThat(error)
                .as("%s [%s]: expected %s, found %s, relative error", quantity, source, expected, found)
                .isLessThanOrEqualTo(tolerance);
        return this;
    }

    /** Asserts low ≤ found ≤ high: for facts that are bands. */
    public Published liesWithin(String quantity, double low, double high, double found) {
        double outside = Math.max(0, Math.max(low - found, found - high));
        note(quantity, number(low) + " to " + number(high), found, outside, 0, "");
        assertThat(found).as("%s [%s]", quantity, source).isBetween(low, high);
        return this;
    }

    /** Asserts that a statement of the source holds; {@code found} says in words what was seen. */
    public Published holds(String statement, boolean truth, String found) {
        write(statement, "true", found, truth ? "none" : "does not hold", "none");
        assertThat(truth).as("%s [%s]: found %s", statement, source, found).isTrue();
        return this;
    }

    private void note(String quantity, String expected, double found, double error, double tolerance, String how) {
        write(
                quantity,
                expected,
                number(found),
                String.format(Locale.ROOT, "%.1e%s", error, how),
                String.format(Locale.ROOT, "%.1e", tolerance));
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.7g", value);
    }

    private void write(String quantity, String expected, String found, String error, String allowed) {
        String folder = System.getProperty("galena.validation");
        if (folder == null) return;
        String line = String.join("\t", module, kind.toString(), source, quantity, expected, found, error, allowed);
        try {
            Files.createDirectories(Path.of(folder));
            Files.writeString(
                    Path.of(folder, "published.tsv"),
                    line.replace('\n', ' ') + "\n",
                    StandardCharsets.UTF_8,
                    StandardOpenOption.CREATE,
                    StandardOpenOption.APPEND);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
