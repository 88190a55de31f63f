package galena.trade.wire;

import java.util.Locale;

/** What stands behind a figure in a table that Galena ships. */
public enum Basis {
    /** Read in a public text. */
    SEEN,
    /** Worked out from a stated formula. */
    COMPUTED,
    /** Given by the builder, measured or from a data sheet in hand. */
    GIVEN,
    /** Recalled and not read again: to be shown as unverified. */
    MEMORY;

    /** Reads the word as the data files write it. */
    public static Basis of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }

    public boolean isVerified() {
        return this != MEMORY;
    }
}
