package galena.build.source;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The known word nearest to one that isn't known. */
public final class Nearest {
    private Nearest() {}

    /**
     * The known word with the fewest slips (a letter missed, added, changed, or two swapped: Damerau and Levenshtein's
     * distance, case apart), if they are at most a third of the word. A plural, or {@code -} for {@code _}, costs one slip. A word that
     * begins a single known one stands for it.
     */
    public static Optional<String> to(String word, Collection<String> known) {
        Optional<String> whole = abbreviated(word, known);
        if (whole.isPresent()) return whole;
        return known.stream()
                .filter(candidate -> isNear(word, candidate))
                .min(Comparator.comparingInt((String candidate) -> slips(word, candidate))
                        .thenComparing(Comparator.naturalOrder()));
    }

    /** The only known word that starts with this one: d for drain, tol for tolerance. */
    private static Optional<String> abbreviated(String word, Collection<String> known) {
        String start = word.toLowerCase(Locale.ROOT);
        List<String> longer = known.stream()
                .filter(candidate -> candidate.toLowerCase(Locale.ROOT).startsWith(start) && !start.isEmpty())
                .toList();
        return longer.size() == 1 ? Optional.of(longer.get(0)) : Optional.empty();
    }

    private static boolean isNear(String word, String candidate) {
        int shorter = Math.min(word.length(), candidate.length());
        int slips = slips(word, candidate);
        return slips < shorter && slips <= Math.max(1, shorter / 3);
    }

    static int slips(String one, String other) {
        String a = one.toLowerCase(Locale.ROOT);
        String b = other.toLowerCase(Locale.ROOT);
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) d[i][0] = i;
        for (int j = 0; j <= b.length(); j++) d[0][j] = j;
        for (int i = 1; i <= a.length(); i++) {
            for (int j = 1; j <= b.length(); j++) {
                int change = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                d[i][j] = Math.min(change, 1 + Math.min(d[i - 1][j], d[i][j - 1]));
                boolean swapped =
                        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
                if (swapped) d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
            }
        }
        return d[a.length()][b.length()];
    }
}
