package galena.desk.console;

/** How a command ended, as the caller of the process sees it. Documented in {@code galena --help}. */
public enum ExitCode {
    /** The question was answered, whether or not the builder likes the answer. */
    DONE(0, "answered"),
    /** Galena itself went wrong: a fault to report, with its stack. */
    FAULT(1, "a fault in Galena: please report it"),
    /** The command line or a file of the build cannot be used; nothing was computed or written. */
    BAD_INPUT(2, "the command line or a file of the build cannot be used"),
    /** What was asked for does not exist, such as the frequency of a circuit that does not oscillate. */
    NO_ANSWER(3, "computed, but there is no such answer (it does not oscillate, say)"),
    /** Asked with {@code --strict}: the build does not meet its intent. */
    NOT_MET(4, "with --strict: the build does not meet its intent"),
    /** Stopped by Ctrl-C, as shells expect it. */
    STOPPED(130, "stopped by Ctrl-C");

    private final int number;
    private final String meaning;

    ExitCode(int number, String meaning) {
        this.number = number;
        this.meaning = meaning;
    }

    public int number() {
        return number;
    }

    public String meaning() {
        return meaning;
    }
}
