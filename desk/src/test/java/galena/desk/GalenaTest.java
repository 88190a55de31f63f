package galena.desk;

import static org.assertj.core.api.Assertions.assertThat;

import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

final class GalenaTest {
    private final ByteArrayOutputStream answers = new ByteArrayOutputStream();
    private final ByteArrayOutputStream remarks = new ByteArrayOutputStream();

    private int run(String... arguments) {
        Terminal terminal = new Terminal(
                new PrintStream(answers, false, StandardCharsets.UTF_8),
                new PrintStream(remarks, true, StandardCharsets.UTF_8),
                StandardCharsets.UTF_8,
                false,
                false,
                80);
        return Galena.run(terminal, arguments);
    }

    @Test
    void help_lists_every_exit_code() {
        assertThat(run("--help")).isZero();
        for (ExitCode code : ExitCode.values()) {
            assertThat(answers.toString(StandardCharsets.UTF_8))
                    .containsPattern(
                            "(?m)^ +" + code.number() + " +" + code.meaning().substring(0, 20));
        }
    }

    @Test
    void a_slip_on_the_command_line_is_bad_input_without_a_stack() {
        assertThat(run("--hepl")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(remarks.toString(StandardCharsets.UTF_8))
                .contains("--hepl", "galena --help shows")
                .doesNotContain("\tat ");
        assertThat(answers.size()).isZero();
    }
}
