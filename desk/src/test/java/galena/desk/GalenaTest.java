package galena.desk;

import static org.assertj.core.api.Assertions.assertThat;

import galena.desk.console.ExitCode;
import java.nio.file.NoSuchFileException;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

final class GalenaTest {
    private final Screen screen = new Screen();

    @Test
    void help_lists_every_step_and_every_exit_code() {
        assertThat(screen.run("--help")).isZero();
        assertThat(screen.answers()).contains("demo", "predict", "cover");
        for (ExitCode code : ExitCode.values()) {
            assertThat(screen.answers())
                    .containsPattern("(?m)^ +" + code.number() + " +"
                            + Pattern.quote(code.meaning().split(",")[0]));
        }
    }

    @Test
    void every_step_has_help_that_computes_nothing() {
        for (String step : Galena.commandLine(screen.terminal).getSubcommands().keySet()) {
            Screen own = new Screen();
            assertThat(own.run(step, "--help")).as(step).isZero();
            assertThat(own.answers()).as(step).startsWith("Usage: galena " + step);
            assertThat(own.remarks()).as(step).isEmpty();
        }
    }

    @Test
    void a_slip_on_the_command_line_is_bad_input_without_a_stack() {
        assertThat(screen.run("perdict")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("predict", "x", "--josn")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("cover", "x")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("cover", "x", "Ct", "--steps", "many")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.remarks())
                .contains(
                        "\"perdict\" has no meaning here",
                        "galena predict",
                        "PART is missing",
                        "galena cover --help shows")
                .doesNotContain("\tat ");
        assertThat(screen.answers()).isEmpty();
    }

    @Test
    void a_fault_keeps_its_stack_and_is_called_one() {
        int code = Galena.failed(screen.terminal, new IllegalStateException("two carriers"));
        assertThat(code).isEqualTo(ExitCode.FAULT.number());
        assertThat(screen.remarks())
                .startsWith("This is a fault in Galena")
                .contains("two carriers", "\tat galena.desk");
    }

    @Test
    void a_disk_that_refuses_is_no_fault() {
        int code = Galena.failed(screen.terminal, new NoSuchFileException("packet/x.svg"));
        assertThat(code).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.remarks()).isEqualToIgnoringNewLines("packet/x.svg: there is no such file or folder");
    }
}
