package galena.engine.envelope;

import java.util.Locale;

/** What the search for a modulated oscillation came to. */
public sealed interface EnvelopeAnswer permits Envelope, EnvelopeRun, EnvelopeAnswer.NotFound {
    /** Why there is none. */
    enum Reason {
        /** From some level on no smooth answer was found: the oscillation quits in the trough, snaps, or its modulator shuts too sharply. */
        QUITS(
                "no smooth envelope beyond a part of the level: the oscillation quits in the trough, or is cut off sharply"),
        /** The envelope is too sharp for the most slow points allowed. */
        TOO_SHARP("the envelope changes with every refinement of the slow points"),
        /** Followed in time only: the slow period holds too many carrier cycles. */
        TOO_LONG("two periods of so slow a source hold more carrier cycles than are allowed to be followed in time"),
        /** Followed in time only. */
        STUCK("the run in time could not be continued");

        private final String words;

        Reason(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /**
     * None.
     *
     * @param share of the level that could be reached, 0 to 1
     */
    record NotFound(Reason reason, double share) implements EnvelopeAnswer {
        @Override
        public String toString() {
            return reason + String.format(Locale.ROOT, " (reached %.0f %% of the level)", 100 * share);
        }
    }
}
