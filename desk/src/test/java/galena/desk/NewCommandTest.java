package galena.desk;

import static org.assertj.core.api.Assertions.assertThat;

import galena.build.pattern.Pattern;
import galena.desk.console.ExitCode;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class NewCommandTest {
    @TempDir
    private Path folder;

    private final Screen screen = new Screen();

    private int run(String... arguments) {
        return screen.run((Object[]) arguments);
    }

    private String answered() {
        return screen.answers();
    }

    private String remarked() {
        return screen.remarks();
    }

    @Test
    void without_a_folder_the_patterns_are_listed_a_line_each() {
        assertThat(run("new")).isZero();
        for (Pattern pattern : Pattern.all())
            assertThat(answered().lines())
                    .anySatisfy(
                            line -> assertThat(line).startsWith(pattern.name()).endsWith(pattern.summary()));
    }

    @Test
    void a_pattern_is_written_once_and_never_over_another_build() throws Exception {
        Path build = folder.resolve("shed");
        assertThat(run("new", build.toString(), "--pattern", "clapp")).isZero();
        assertThat(build.resolve("build.yaml"))
                .hasContent(Pattern.named("clapp").text());
        assertThat(answered()).contains("build.yaml");

        Files.writeString(build.resolve("build.yaml"), "mine");
        assertThat(run("new", build.toString(), "--pattern", "quartz")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(build.resolve("build.yaml")).hasContent("mine");
        assertThat(remarked()).contains("has a build.yaml already").doesNotContain("\tat ");
    }

    @Test
    void a_folder_without_a_pattern_is_told_how_to_choose_one() {
        assertThat(run("new", folder.resolve("shed").toString())).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(remarked()).contains("no pattern is named", "Run galena new to see them");
        assertThat(folder.resolve("shed")).doesNotExist();
    }
}
