package galena.trade.source;

import java.util.Collection;
import java.util.Locale;

/** What stands behind a number, strongest first. A result is no stronger than the weakest number it uses. */
public enum Basis {
    /** Measured or entered by the builder. */
    BUILDER("entered by the builder", true),
    /** Read in a public text whose address is kept. */
    SEEN("seen in print", true),
    /** Worked out from a stated formula. */
    COMPUTED("computed", true),
    /** Custom of the trade, without a printed source. */
    COMMON_PRACTICE("common practice", false),
    /** Recalled and not read again: shown as unverified. */
    MEMORY("unverified: recalled, not read again", false);

    private final String words;
    private final boolean verified;

    Basis(String words, boolean verified) {
        this.words = words;
        this.verified = verified;
    }

    /** Whether it may be shown without the word "unverified". */
    public boolean isVerified() {
        return verified;
    }

    /** The basis that a data table names in lower case with underscores. */
    public static Basis named(String word) {
        for (Basis basis : values()) {
            if (basis.name().equals(word.toUpperCase(Locale.ROOT))) return basis;
        }
        throw new IllegalArgumentException(
                "no basis is called \"" + word + "\"; known: seen, computed, memory, builder, " + "common_practice");
    }

    /** The weakest of several; {@link #COMPUTED} of none, since nothing but arithmetic was used. */
    public static Basis weakest(Collection<Basis> several) {
        return several.stream().max(Basis::compareTo).orElse(COMPUTED);
    }

    @Override
    public String toString() {
        return words;
    }
}
