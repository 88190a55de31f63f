package galena.bench.capture;

/**
 * Something about a capture that its reader should know.
 *
 * @param kind for programs
 * @param sentence for people
 */
public record Note(Kind kind, String sentence) {
    /** What a note is about. */
    public enum Kind {
        /** A guess that the builder may want to state instead. */
        GUESSED,
        /** Rows that held no numbers where numbers were expected. */
        ROWS_SKIPPED,
        /** Samples missing between others: the record is used up to the gap or after it. */
        DROPPED_SAMPLES,
        /** Time stamps written with too few digits, so that neighbours are equal. */
        ROUNDED_STAMPS,
        /** Two values per stamp, the lowest and the highest: good for an envelope, not for a spectrum. */
        MIN_MAX_PAIRS,
        /** Values at the ends of the range, many in a row. */
        CLIPPED,
        /** The file's own words contradict its contents. */
        CONTRADICTION,
        /** Only the first part is kept for measuring. */
        PARTLY_KEPT,
        /** Several records follow each other. */
        SEGMENTS,
        /** A probe ratio is mentioned; whether it is applied cannot be told. */
        PROBE
    }
}
