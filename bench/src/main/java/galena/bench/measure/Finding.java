package galena.bench.measure;

/**
 * Something wrong with a capture, or with what it shows.
 *
 * @param kind for programs
 * @param sentence for people: what, and what to do
 */
public record Finding(Kind kind, String sentence) {
    /** Kinds, the gravest first: the verdict takes the first one that is there. */
    public enum Kind {
        NO_CARRIER,
        TOO_SHORT,
        CLIPPED,
        ALIASED,
        WRONG_TIME_BASE,
        DETECTED_AUDIO,
        MIN_MAX_PAIRS,
        DROPPED_SAMPLES,
        OVERMODULATED,
        SWING,
        DISTORTED,
        HUM,
        HARMONICS,
        UNEVEN_PEAKS,
        TOO_FEW_SAMPLES,
        ROUNDED_STAMPS,
        NO_STEADY_TONE,
        PARTLY_USED,
        UNDERSTANDING
    }
}
