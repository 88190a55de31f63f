package galena.build.reach;

import galena.trade.limit.Outcome;

/** How a build stands to a rule; the later in this list, the worse. Says nothing about the law. */
public enum Standing {
    WITHIN("inside the figure held"),
    /** Inside with typical parts, outside with some that tolerances allow. */
    TYPICALLY("inside the figure held with typical parts, not with all"),
    OPEN("open: a figure is missing"),
    EXCEEDED("outside the figure held"),
    NOT_AVAILABLE("not open to this build");

    private final String words;

    Standing(String words) {
        this.words = words;
    }

    static Standing of(Outcome outcome) {
        return switch (outcome) {
            case WITHIN -> WITHIN;
            case OPEN -> OPEN;
            case EXCEEDED -> EXCEEDED;
            case NOT_AVAILABLE -> NOT_AVAILABLE;
        };
    }

    @Override
    public String toString() {
        return words;
    }
}
