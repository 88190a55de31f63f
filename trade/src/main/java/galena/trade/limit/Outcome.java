package galena.trade.limit;

/** How something stands to a rule; the later in this list, the worse. */
public enum Outcome {
    /** Inside the figure held. Says nothing about the law. */
    WITHIN,
    /** A figure is missing that the build or the builder has to give. */
    OPEN,
    /** Outside the figure held. */
    EXCEEDED,
    /** The rule is for another kind of station. */
    NOT_AVAILABLE
}
