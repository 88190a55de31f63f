package galena.bench.reconcile;

import galena.build.figure.Figure;
import galena.build.folder.Calibration;
import galena.build.folder.LogEntry;
import java.util.List;
import java.util.Optional;

/**
 * What all readings of a build say together.
 *
 * @param build its name
 * @param verdict in one word
 * @param words the explanation, a sentence or two each, what matters most first
 * @param readings those that the fit took, in the order of the log
 * @param unused those that it did not take, each with the reason
 * @param unknowns what is left of each unknown of the build, what was learnt most of first
 * @param together what these readings can't tell apart, a sentence each
 * @param next the reading worth taking next
 * @param suspicions what is thought wrong
 * @param misfit squares of all errors in their deviations, tolerances counted in; about the number of readings is to be expected
 * @param calibration that may be accepted; empty where the readings are not explained, or where something is wrong with the build
 */
public record Reconciliation(
        String build,
        Verdict verdict,
        List<String> words,
        List<Taken> readings,
        List<String> unused,
        List<Left> unknowns,
        List<String> together,
        Optional<Next> next,
        List<Suspicion> suspicions,
        double misfit,
        Optional<Calibration> calibration) {
    /** What came of it. */
    public enum Verdict {
        /** Tolerances, devices and strays explain every reading. */
        EXPLAINED,
        /** They do, once a reading is left out or corrected that is thought wrong. */
        WRONG_READING,
        /** A wrong part explains the readings, and nothing else does nearly as well. */
        WRONG_PART,
        /** Nothing in the list explains the readings. */
        UNEXPLAINED,
        /** The readings say too little of any single unknown. */
        TOO_FEW
    }

    /**
     * A reading with what is predicted of it.
     *
     * @param before any reading, with the interval that tolerances and devices give
     * @param after all readings
     * @param errorBefore of the reading against the typical prediction, in standard deviations of reading and tolerances together
     * @param errorAfter against the fitted prediction, in standard deviations of the reading alone
     * @param wrong whether it is thought wrong; it was then left out or corrected
     */
    public record Taken(
            LogEntry reading,
            Figure.Known before,
            Figure.Known after,
            double errorBefore,
            double errorAfter,
            boolean wrong) {}

    /** How much the readings say of an unknown. */
    public enum Standing {
        /** Its interval is at most 0.7 of what it was. */
        FOUND,
        /** Somewhat narrower than before. */
        NARROWED,
        /** It only returns what was known before. */
        AS_BEFORE
    }

    /**
     * An unknown.
     *
     * @param before any reading
     * @param after all readings
     * @param share of its old interval that is left
     */
    public record Left(Figure.Known before, Figure.Known after, double share, Standing standing) {}

    /**
     * A reading worth taking.
     *
     * @param words what and how
     * @param about the unknown of which it tells most
     * @param now what is known of that
     * @param expected half-width of its interval afterwards, in its unit
     */
    public record Next(String words, String about, Figure.Known now, double expected) {}

    /**
     * Something thought wrong.
     *
     * @param words what
     * @param odds against nothing being wrong, natural logarithm
     */
    public record Suspicion(String words, double odds) {}

    public Reconciliation {
        words = List.copyOf(words);
        readings = List.copyOf(readings);
        unused = List.copyOf(unused);
        unknowns = List.copyOf(unknowns);
        together = List.copyOf(together);
        suspicions = List.copyOf(suspicions);
    }
}
