package galena.build.winding;

/** What a trial winding told, or why it tells nothing. */
public sealed interface TrialAnswer {
    /** What it told. */
    record Told(Trial trial) implements TrialAnswer {}

    /**
     * @param reason in words that follow "The trial tells nothing: "
     * @param remedy what to check
     */
    record None(String reason, String remedy) implements TrialAnswer {}
}
