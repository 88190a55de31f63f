package galena.build.source;

import java.util.List;

/** What the builder wrote cannot be used; the problems say where and why. Never a fault of the program. */
public final class BadInputException extends Exception {
    private static final long serialVersionUID = 1;

    private final transient List<Problem> problems;

    /** @param problems at least one, in the order of the file */
    public BadInputException(List<Problem> problems) {
        super(Problem.print(problems));
        if (problems.isEmpty()) throw new IllegalArgumentException("no problem to report");
        this.problems = List.copyOf(problems);
    }

    public BadInputException(Problem problem) {
        this(List.of(problem));
    }

    public List<Problem> problems() {
        return problems;
    }
}
