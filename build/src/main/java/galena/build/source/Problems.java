package galena.build.source;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Collects the problems of one reading, so that all are reported together. Not for several threads. */
public final class Problems {
    private final List<Problem> found = new ArrayList<>();

    public void add(Problem problem) {
        if (!found.contains(problem)) found.add(problem);
    }

    public void addAll(List<Problem> problems) {
        problems.forEach(this::add);
    }

    public int count() {
        return found.size();
    }

    public boolean isEmpty() {
        return found.isEmpty();
    }

    /** All problems by file, line and column. */
    public List<Problem> sorted() {
        return found.stream()
                .sorted(Comparator.comparing((Problem p) -> p.place().file())
                        .thenComparing(p -> p.place().line())
                        .thenComparing(p -> p.place().column()))
                .toList();
    }

    /** Ends the reading if there is anything to report. */
    public void throwIfAny() throws BadInputException {
        if (!isEmpty()) throw new BadInputException(sorted());
    }
}
