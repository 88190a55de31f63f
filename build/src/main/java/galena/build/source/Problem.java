package galena.build.source;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Something in a file that is not as it should be, in the builder's words.
 *
 * @param place where
 * @param path the keys that lead there, {@code parts.Ct.trimmer}; empty for the file as a whole
 * @param found what was read and what is wrong with it, without a full stop
 * @param rule what is allowed, a whole sentence
 * @param remedy what would be right, if that can be said
 */
public record Problem(Place place, String path, String found, String rule, Optional<String> remedy) {
    public Problem(Place place, String path, String found, String rule) {
        this(place, path, found, rule, Optional.empty());
    }

    public Problem(Place place, String path, String found, String rule, String remedy) {
        this(place, path, found, rule, Optional.of(remedy));
    }

    /** Two lines: place, path and finding; rule and remedy. */
    @Override
    public String toString() {
        String head = place + "  " + (path.isEmpty() ? "" : path + ": ") + found;
        return head + System.lineSeparator() + "  " + rule
                + remedy.map(r -> " " + r).orElse("");
    }

    /** All problems, one under the other. */
    public static String print(List<Problem> problems) {
        return problems.stream().map(Problem::toString).collect(Collectors.joining(System.lineSeparator()));
    }
}
