package galena.bench.measure;

import galena.signal.Estimate;

/** What came out for one figure. */
public sealed interface Reading {
    /** A value with its 95 % interval. */
    record Known(Estimate estimate) implements Reading {}

    /** Nothing above the noise; the true value lies below this limit with 97.5 % confidence. */
    record Below(double limit) implements Reading {}

    /** It could not be had, and why. */
    record Missing(String reason) implements Reading {}
}
