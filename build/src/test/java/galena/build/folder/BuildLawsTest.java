package galena.build.folder;

import static org.assertj.core.api.Assertions.assertThat;

import galena.build.source.BadInputException;
import galena.build.source.Edit;
import galena.build.source.Editor;
import galena.build.source.Node;
import galena.build.source.Problem;
import galena.build.source.Problems;
import galena.build.source.SourceFile;
import galena.build.source.YamlReader;
import galena.build.wiring.CircuitOf;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What holds for every text, tried on many of them; seeds are fixed and named when a try fails. */
class BuildLawsTest {
    private static final int FEW = 300;
    private static final int MANY = 20_000;

    private static SourceFile file(String text) throws BadInputException {
        return SourceFile.of(Path.of("build.yaml"), "build.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    /** However a build is spoilt, what comes is a circuit or problems with places in the file: never a fault. */
    @Test
    void a_spoilt_build_is_bad_input_and_never_a_fault() {
        spoil(0, FEW);
    }

    @Test
    @Tag("long")
    void many_spoilt_builds_are_bad_input_and_never_a_fault() {
        spoil(FEW, MANY);
    }

    private static void spoil(int from, int to) {
        int refused = 0;
        for (int seed = from; seed < to; seed++) {
            String text = spoilt(Builds.EVERYTHING, new Random(seed));
            try {
                CircuitOf.build(Builds.read(text), Overlay.NONE);
            } catch (BadInputException bad) {
                refused++;
                long lines = text.lines().count();
                for (Problem problem : bad.problems()) {
                    assertThat((long) problem.place().line())
                            .as("seed %d: %s", seed, problem)
                            .isBetween(1L, lines + 1);
                    assertThat(problem.rule()).as("seed %d: %s", seed, problem).endsWith(".");
                }
            } catch (RuntimeException fault) {
                throw new AssertionError("seed " + seed + " is a fault:\n" + text, fault);
            }
        }
        assertThat(refused).isGreaterThan((to - from) / 2);
    }

    /** A few letters dropped, doubled, swapped or replaced, or a line lost or doubled. */
    private static String spoilt(String text, Random random) {
        StringBuilder out = new StringBuilder(text);
        String signs = "0123456789 .,:;-+%{}[]#'\"@&*!|>\nabkmMµΩ\t";
        for (int slips = 1 + random.nextInt(3); slips > 0; slips--) {
            int at = random.nextInt(out.length() - 1);
            switch (random.nextInt(6)) {
                case 0 -> out.deleteCharAt(at);
                case 1 -> out.insert(at, out.charAt(at));
                case 2 -> out.setCharAt(at, signs.charAt(random.nextInt(signs.length())));
                case 3 -> out.insert(at, signs.charAt(random.nextInt(signs.length())));
                case 4 -> out.delete(at, Math.min(out.length(), at + random.nextInt(20)));
                default -> {
                    int end = Math.max(at + 1, out.indexOf("\n", at));
                    out.insert(at, out.substring(at, Math.min(end, out.length())));
                }
            }
        }
        return out.toString();
    }

    /** Every value of a build, changed and changed back, leaves the file byte for byte; and only its own bytes move. */
    @Test
    void every_value_can_be_changed_alone_and_changed_back() throws BadInputException {
        for (String text : List.of(
                Builds.EVERYTHING, "\uFEFF" + Builds.EVERYTHING.replace("\n", "\r\n"), Builds.STAGE.stripTrailing())) {
            SourceFile file = file(text);
            Map<String, Node> all = YamlReader.read(file, new Problems()).all();
            for (Node node : all.values()) {
                if (!(node instanceof Node.Scalar scalar)) continue;
                Edit edit = Edit.change(scalar.path(), scalar.text(), "another value µ");
                SourceFile changed = Editor.apply(file, edit);
                assertThat(new String(changed.bytes(), StandardCharsets.UTF_8))
                        .as(scalar.path())
                        .hasSize(text.length() - scalar.text().length() + "another value µ".length());
                assertThat(Editor.apply(changed, edit.undo()).bytes())
                        .as(scalar.path())
                        .isEqualTo(file.bytes());
            }
        }
    }
}
