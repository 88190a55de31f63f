package galena.proof;

/** What stands behind an expected value. */
public enum Kind {
    /** A published standard or regulation, by clause. */
    STANDARD("standard"),
    /** A table printed in a book or paper. */
    TABLE("table"),
    /** An exact formula, worked out independently of the code under test. */
    CLOSED_FORM("closed form"),
    /** An example worked in a book or paper. */
    WORKED_EXAMPLE("worked example"),
    /** A general-purpose library doing the same by other means. */
    LIBRARY("library"),
    /** Custom of the trade without a printed source. */
    COMMON_PRACTICE("common practice"),
    /** A published value recalled and not read again: not to be shown to users as verified. */
    MEMORY("from memory");

    private final String words;

    Kind(String words) {
        this.words = words;
    }

    @Override
    public String toString() {
        return words;
    }
}
