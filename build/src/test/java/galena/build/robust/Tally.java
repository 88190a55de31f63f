package galena.build.robust;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Counts trials, and keeps those without an answer with what is needed to see them again. */
final class Tally {
    /** Looked for beyond this time, s; what design promises of the slowest. */
    static final double SLOW = 2;

    private final Map<Trial.End, Integer> counts = new EnumMap<>(Trial.End.class);
    private final List<String> unanswered = new ArrayList<>();
    private final Map<Trial.End, List<String>> names = new EnumMap<>(Trial.End.class);
    private int growing;
    private int growingAnswered;
    private double slowest;
    private String slowestWhat = "";
    private int slow;

    /** @param folder where unanswered builds are written as files; null for nowhere */
    void count(String name, String what, KeptBuild kept, Trial trial, @Nullable Path folder) throws IOException {
        counts.merge(trial.end(), 1, Integer::sum);
        names.computeIfAbsent(trial.end(), e -> new ArrayList<>()).add(name);
        if (trial.growing()) {
            growing++;
            if (trial.end().answered) growingAnswered++;
        }
        if (trial.seconds() > slowest) {
            slowest = trial.seconds();
            slowestWhat = what;
        }
        if (trial.seconds() > SLOW) slow++;
        if (trial.end().answered) return;
        unanswered.add(what + ": " + trial.end() + ", " + trial.detail());
        if (folder == null) return;
        Files.createDirectories(folder);
        String happened = "# " + oneLine(what) + "\n# " + trial.end() + ": " + oneLine(trial.detail()) + "\n";
        Files.writeString(folder.resolve(name + ".yaml"), kept.heading() + happened + kept.text());
    }

    private static String oneLine(String text) {
        return text.replace("\n", " ");
    }

    int unansweredCount() {
        return unanswered.size();
    }

    int of(Trial.End end) {
        return counts.getOrDefault(end, 0);
    }

    /** Share of the builds with a growing pair that end in an answer. */
    double answered() {
        return growing == 0 ? 1 : (double) growingAnswered / growing;
    }

    double slowest() {
        return slowest;
    }

    @Override
    public String toString() {
        return String.format(
                        Locale.ROOT,
                        "%s%nwith a growing pair %d, of these answered %d (%.2f %%)%nslowest %.2f s (%s), over %.0f s: %d%n",
                        counts,
                        growing,
                        growingAnswered,
                        100 * answered(),
                        slowest,
                        slowestWhat,
                        SLOW,
                        slow)
                + "not stable: " + names.getOrDefault(Trial.End.SQUEGS, List.of()) + "\nundecided: "
                + names.getOrDefault(Trial.End.UNDECIDED, List.of()) + "\n"
                + unanswered.stream().map(u -> "  " + u + "\n").collect(Collectors.joining());
    }
}
