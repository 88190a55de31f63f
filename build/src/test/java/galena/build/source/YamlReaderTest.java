package galena.build.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import galena.build.source.Node.Mapping;
import galena.build.source.Node.Scalar;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class YamlReaderTest {
    private static final String BUILD =
            "galena: 1\r\n# µ before the part\r\nparts:\r\n  Lt: {coil: 180 µH, q: 85 @ 1 MHz}\r\n  Ct: {trimmer: 5..60 pF}\r\nstrays:\r\n  - {from: a}\r\n";

    private static Mapping read(String text) throws BadInputException {
        Problems problems = new Problems();
        Mapping top = YamlReader.read(Texts.file(text), problems);
        problems.throwIfAny();
        return top;
    }

    @ParameterizedTest
    @CsvSource({
        "galena, 1, 1, 9",
        "parts.Lt.coil, 180 µH, 4, 14",
        "parts.Lt.q, 85 @ 1 MHz, 4, 25",
        "parts.Ct.trimmer, 5..60 pF, 5, 17",
        "strays[1].from, a, 7, 12",
    })
    void every_value_knows_its_place(String path, String text, int line, int column) throws BadInputException {
        for (String mark : new String[] {"", "\uFEFF"}) {
            Node node = read(mark + BUILD).find(path).orElseThrow();
            assertThat(((Scalar) node).text()).isEqualTo(text);
            assertThat(node.place()).isEqualTo(new Place("build.yaml", line, column));
        }
    }

    @Test
    void columns_count_characters_beyond_the_basic_plane_as_one() throws BadInputException {
        Node node = read("name: {a: 𝛺𝛺, b: x}").find("name.b").orElseThrow();
        assertThat(node.place().column()).isEqualTo(18);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "a: 1\\na: 2                | 2:1 | is written a second time                          | Rename or delete one of the two.",
                "a: &x 1                    | 1:4 | an anchor (&) stands here                         | Write the value out where it is needed.",
                "a: *x                      | 1:4 | an alias (*) stands here                          | Write the value out where it is needed.",
                "a: !x 1                    | 1:4 | a tag (!) stands here                             | Put a text that starts with ! in quotes.",
                "a: 1\\n---\\nb: 2          | 2:1 | a second document starts here                     | Delete the ---.",
                "[1, 2]                     | 1:1 | starts with a list                                | First line: galena: 1",
                "''                         | 1:1 | is empty                                          | First line: galena: 1",
                "'# only a comment'         | 1:1 | is empty                                          | First line: galena: 1",
                "plain words                | 1:1 | starts with a value                               | First line: galena: 1",
                "a:\\n\\tb: 1               | 2:1 | a tab stands here                                 | Indent with blanks.",
                "a: b: c                    | 1:5 | a second colon in one line, or a line indented too far | Put a text that holds a colon in quotes, and start keys of one group in the same column.",
                "a: {b: 1 c: 2}             | 1:11 | a comma or a closing } is missing before this    | Separate keys in {…} by commas.",
                "a: [1, 2                   | 1:9 | a comma or a closing ] is missing before this     | Separate items in […] by commas.",
                "a: 1\\nb\\nc: 1            | 3:1 | a key without a colon                             | Write key: value.",
                "a: 1\\n  b: 2              | 2:4 | a second colon in one line, or a line indented too far | Put a text that holds a colon in quotes, and start keys of one group in the same column.",
                "a:\\n    b: 2\\n  c: 3     | 3:3 | this line is indented unlike its neighbours       | Start keys of one group in the same column.",
                "a: \"open                  | 1:9 | a quote is not closed                             | Close it with the sign that opened it.",
                "a: @home                   | 1:4 | a value starts with a sign that YAML keeps for itself | Put the value in quotes.",
                "a: % 5                     | 1:4 | a value starts with a sign that YAML keeps for itself | Put the value in quotes.",
                "{a: {b: 1}}: 2             | 1:1 | a key is a group of keys                          | ",
                "a: \\u0007                 | 1:4 | the character U+0007 stands here                  | Delete it.",
            })
    void what_is_no_yaml_for_us_is_refused_with_its_place(String text, String place, String found, String remedy) {
        String yaml = text.replace("\\n", "\n").replace("\\t", "\t").replace("\\u0007", "\u0007");
        BadInputException bad = catchThrowableOfType(BadInputException.class, () -> read(yaml));
        Problem problem = bad.problems().get(0);
        assertThat(problem.place()).hasToString("build.yaml:" + place);
        assertThat(problem.found()).isEqualTo(found);
        assertThat(problem.remedy().orElse(null)).isEqualTo(remedy);
    }

    @Test
    void deep_nesting_is_refused_and_exhausts_nothing() {
        BadInputException bad = catchThrowableOfType(BadInputException.class, () -> read("a: " + "[".repeat(5000)));
        assertThat(bad.problems()).hasSize(1);
    }

    @Test
    void all_problems_of_a_file_come_at_once_in_order() {
        BadInputException bad =
                catchThrowableOfType(BadInputException.class, () -> read("b: &x 1\na: 2\na: !y 3\nb: 4\n"));
        assertThat(bad.problems()).extracting(p -> p.place().line()).containsExactly(1, 3, 3, 4);
    }

    @Test
    void a_byte_that_is_not_utf8_is_named_with_its_place(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("build.yaml");
        Files.write(file, "galena: 1\nname: 10 µH".getBytes(StandardCharsets.ISO_8859_1));
        BadInputException bad =
                catchThrowableOfType(BadInputException.class, () -> SourceFile.read(file, "build.yaml"));
        assertThat(bad.problems().get(0).place()).hasToString("build.yaml:2:10");
        assertThat(bad.problems().get(0).found()).isEqualTo("byte B5 is not UTF-8");
    }

    @Test
    void a_missing_file_and_a_folder_are_bad_input(@TempDir Path folder) {
        for (Path path : new Path[] {folder.resolve("none.yaml"), folder}) {
            BadInputException bad =
                    catchThrowableOfType(BadInputException.class, () -> SourceFile.read(path, "build.yaml"));
            assertThat(bad.problems()).hasSize(1);
        }
    }

    @Test
    void a_problem_prints_place_value_rule_and_remedy() {
        Problem problem = new Problem(
                new Place("build.yaml", 13, 18),
                "parts.Ct.trimmer",
                "\"5..60\" has no unit",
                "A trimmer takes a capacitance range.",
                "Nearest: 5..60 pF");
        assertThat(problem.toString().lines())
                .containsExactly(
                        "build.yaml:13:18  parts.Ct.trimmer: \"5..60\" has no unit",
                        "  A trimmer takes a capacitance range. Nearest: 5..60 pF");
    }
}
