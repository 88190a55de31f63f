package galena.build.propose;

import galena.build.attempt.Neighbour;
import galena.build.attempt.Tried;
import galena.build.folder.Build;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The text of a proposed build: values in their lines, reasons and neighbours as comments below, headings kept. */
final class Commented {
    private static final Pattern PART = Pattern.compile("^  (\\w+):\\s+(\\{.*})\\s*(#.*)?$");
    private static final int WIDTH = 116;
    private static final String INDENT = "  #    ";

    /** Words of a pattern's headings that hold for its own values alone. */
    private static final String OWN_FIGURES = ",? by a few (hundred hertz|kilohertz) here";

    private Commented() {}

    /** Of a build made from a pattern: the pattern's comments give way to the proposal's own. */
    static String fresh(Build build, List<String> head, List<Proposal.Value> values, Map<String, String> recipes) {
        Map<String, Proposal.Value> byPart =
                values.stream().collect(Collectors.toMap(Proposal.Value::part, Function.identity()));
        List<String> lines = new ArrayList<>();
        boolean parts = false, named = false;
        for (String line : build.file().text().lines().toList()) {
            if (line.equals("parts:")) parts = true;
            Matcher part = PART.matcher(line);
            if (parts && part.matches() && byPart.containsKey(part.group(1))) {
                lines.add("  " + part.group(1) + ": " + part.group(2));
                Optional.ofNullable(recipes.get(part.group(1))).ifPresent(r -> comment(r, lines));
                words(byPart.get(part.group(1))).ifPresent(w -> comment(w, lines));
                continue;
            }
            lines.add(line.replaceAll(OWN_FIGURES, ""));
            if (!named && line.startsWith("name:")) {
                named = true;
                for (String each : head) wrapped(each, "# ", lines);
            }
        }
        return String.join("\n", lines) + "\n";
    }

    private static Optional<String> words(Proposal.Value value) {
        StringBuilder words = new StringBuilder(sentence(value.reason()));
        value.up().ifPresent(n -> words.append(step(n)));
        value.down().ifPresent(n -> words.append(step(n)));
        return words.length() == 0
                ? Optional.empty()
                : Optional.of(words.toString().strip());
    }

    private static String sentence(String words) {
        if (words.isEmpty()) return "";
        return Character.toUpperCase(words.charAt(0)) + words.substring(1) + ".";
    }

    private static String step(Neighbour n) {
        String yield = n.yield() < Tried.YIELD && !n.effects().contains("does not oscillate")
                ? "; " + Math.round(100 * n.yield()) + " of 100 copies left"
                : "";
        return " " + n.to() + ": " + n.effects() + yield + ".";
    }

    private static void comment(String words, List<String> lines) {
        wrapped(words, INDENT, lines);
    }

    private static void wrapped(String words, String indent, List<String> lines) {
        StringBuilder line = new StringBuilder(indent);
        for (String word : words.split(" ")) {
            if (line.length() > indent.length() && line.length() + word.length() + 1 > WIDTH) {
                lines.add(line.toString());
                line = new StringBuilder(indent);
            }
            if (line.length() > indent.length()) line.append(' ');
            line.append(word);
        }
        lines.add(line.toString());
    }

    /** Of the builder's own build: its text as it stands, and above each line that changed what stood there and what it buys. */
    static String kept(Build build, List<Proposal.Change> changes) {
        List<String> lines = new ArrayList<>();
        for (String line : build.file().text().lines().toList()) {
            Matcher part = PART.matcher(line);
            if (part.matches()) {
                for (Proposal.Change change : changes)
                    if (change.part().equals(part.group(1)))
                        wrapped("Was " + change.from() + ". " + sentence(change.buys()), "  # ", lines);
            }
            lines.add(line);
        }
        return String.join("\n", lines) + "\n";
    }
}
