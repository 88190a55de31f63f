package galena.build.reach;

/** How far a build reaches, or why that can't be said. */
public sealed interface ReachAnswer permits Reach, ReachAnswer.None {
    /** @param reason in words that follow "No reach: " */
    record None(String reason) implements ReachAnswer {}
}
