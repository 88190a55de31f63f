package galena.desk;

import static org.assertj.core.api.Assertions.assertThat;

import galena.desk.console.Terminal;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The README shows what the commands print, and every link in the documents leads somewhere. With {@code -Dgalena.tour=write} the
 * blocks are written anew instead of compared; read the difference before committing it.
 */
final class TourTest {
    private static final Path PROJECT = Path.of("").toAbsolutePath().getParent();
    private static final Pattern BLOCK = Pattern.compile("```console\\n\\$ \\./galena (.*)\\n([^`]*)```");
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)#]+)(#[^)]*)?\\)");
    private static final String DEMO = "galena-demo";

    @Test
    void the_tour_shows_what_the_commands_print(@TempDir Path here) throws IOException {
        Path readme = PROJECT.resolve("README.md");
        String text = Files.readString(readme, StandardCharsets.UTF_8);
        StringBuilder now = new StringBuilder();
        Matcher block = BLOCK.matcher(text);
        int blocks = 0;
        while (block.find()) {
            blocks++;
            String printed = printed(block.group(1), here);
            block.appendReplacement(
                    now, Matcher.quoteReplacement("```console\n$ ./galena " + block.group(1) + "\n" + printed + "```"));
        }
        block.appendTail(now);
        assertThat(blocks).isGreaterThan(2);
        if ("write".equals(System.getProperty("galena.tour"))) {
            Files.writeString(readme, now.toString(), StandardCharsets.UTF_8);
        } else {
            assertThat(settled(text))
                    .as("README.md; see CONTRIBUTING.md for how to renew it")
                    .isEqualTo(settled(now.toString()));
        }
    }

    /** The error that the solver achieved moves with every touch of its meshes, and nobody would notice it in a tour. */
    private static String settled(String text) {
        return text.replaceAll("Solved to \\S+ of the frequency and \\S+ dB", "Solved");
    }

    /** What one command line of the tour prints, in a folder of its own standing for the reader's. */
    private static String printed(String line, Path here) {
        ByteArrayOutputStream both = new ByteArrayOutputStream();
        PrintStream out = new PrintStream(both, true, StandardCharsets.UTF_8);
        Terminal terminal = new Terminal(out, out, StandardCharsets.UTF_8, false, false, 80);
        Path demo = here.resolve(DEMO);
        List<String> arguments = new ArrayList<>();
        for (String word : line.split(" ")) arguments.add(word.equals(DEMO) ? demo.toString() : word);
        if (line.equals("demo")) arguments.add(demo.toString());
        Galena.run(terminal, arguments.toArray(String[]::new));
        return both.toString(StandardCharsets.UTF_8)
                .replace(demo.toString(), DEMO)
                .replace("\r\n", "\n");
    }

    @Test
    void every_link_in_the_documents_leads_somewhere() throws IOException {
        List<String> broken = new ArrayList<>();
        try (Stream<Path> files = Files.find(PROJECT, 3, (p, a) -> p.toString().endsWith(".md"))) {
            for (Path file : files.filter(p -> !p.toString().contains("target")).toList()) {
                Matcher link = LINK.matcher(Files.readString(file, StandardCharsets.UTF_8));
                while (link.find()) {
                    String to = link.group(1);
                    if (to.matches("[a-z]+:.*")) continue;
                    if (Files.notExists(file.resolveSibling(to))) broken.add(PROJECT.relativize(file) + " -> " + to);
                }
            }
        }
        assertThat(broken).isEmpty();
    }
}
