package galena.build.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import galena.build.source.FileVersion.Migration;
import galena.build.source.Node.Mapping;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FileVersionTest {
    /** An invented step: version 2 writes the carrier under another value. */
    private record Step(int from, String path, String before, String after) implements Migration {
        @Override
        public List<Edit> edits(Mapping top) {
            return top.find(path).isPresent() ? List.of(Edit.change(path, before, after)) : List.of();
        }
    }

    @Test
    void older_files_are_brought_up_to_date_step_by_step_and_keep_their_comments() throws Exception {
        List<Migration> steps = List.of(new Step(2, "a", "y", "z"), new Step(1, "a", "x", "y"));
        Problems problems = new Problems();
        SourceFile migrated = FileVersion.migrated(Texts.file("galena: 1 # old\na: x # mine\n"), problems, 3, steps);
        assertThat(Texts.text(migrated)).isEqualTo("galena: 3 # old\na: z # mine\n");
        assertThat(problems.isEmpty()).isTrue();
    }

    @Test
    void a_current_file_stays_as_it_is() throws Exception {
        SourceFile file = Texts.file("galena: 1\n");
        assertThat(FileVersion.migrated(file, new Problems())).isSameAs(file);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "a: 1        | names no version          | 1",
                "galena: one | \"one\" is no version    | 9",
                "galena: 0   | \"0\" is no version      | 9",
                "galena: [1] | \"a list\" is no version | 9",
            })
    void a_missing_or_unreadable_version_is_a_problem_among_others(String text, String found, int column)
            throws Exception {
        Problems problems = new Problems();
        FileVersion.migrated(Texts.file(text), problems);
        Problem problem = problems.sorted().get(0);
        assertThat(problem.found()).isEqualTo(found);
        assertThat(problem.place().column()).isEqualTo(column);
        assertThat(problem.remedy()).contains("Write as the first line: galena: 1");
    }

    @Test
    void a_newer_file_is_refused() throws Exception {
        SourceFile file = Texts.file("galena: 2\n");
        BadInputException bad =
                catchThrowableOfType(BadInputException.class, () -> FileVersion.migrated(file, new Problems()));
        assertThat(bad.problems().get(0).found()).isEqualTo("version 2 is newer than this program");
    }
}
