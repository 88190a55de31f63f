package galena.desk.command;

import static galena.desk.Shape.valid;
import static org.assertj.core.api.Assertions.assertThat;

import galena.build.attempt.Draft;
import galena.build.attempt.Line;
import galena.build.attempt.Neighbour;
import galena.build.figure.Figure;
import galena.build.folder.Build;
import galena.build.pattern.Pattern;
import galena.build.propose.GivesWay;
import galena.build.propose.Proposal;
import galena.build.propose.ProposeAnswer;
import galena.build.quantity.Unit;
import galena.build.substitute.DeviceWindow;
import galena.build.substitute.SubstituteReport;
import galena.build.substitute.ValueRange;
import galena.desk.Screen;
import galena.desk.console.ExitCode;
import galena.desk.writing.ProposeJson;
import galena.desk.writing.ProposeText;
import galena.desk.writing.SubstituteJson;
import galena.desk.writing.SubstituteText;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Propose and substitute as commands: what they refuse before any work, and the shape of what they print. */
final class ProposeCommandsTest {
    @TempDir
    Path here;

    private final Screen screen = new Screen();

    private static Figure.Known share(double value) {
        return new Figure.Known(value, Unit.FRACTION, value - 0.02, value, "counted, 95 %", "yield", "");
    }

    private static Proposal proposal(boolean meets) throws Exception {
        Build build = Draft.read(Pattern.named("clapp").text());
        Neighbour up = new Neighbour("2.7 kΩ", "supply current −4.5 %", 0.9),
                down = new Neighbour("1.8 kΩ", "hardly anything changes", 1);
        return new Proposal(
                Optional.of("clapp"),
                build,
                build.file().text(),
                List.of(
                        new Proposal.Verdict(Line.STARTS, "margin above 0 %", share(0.9), 1, true),
                        new Proposal.Verdict(
                                Line.DISTANCE, "4 m, rod set", new Figure.Missing("distance", "no field"), 0, false)),
                share(0.97),
                40,
                1,
                meets,
                List.of(
                        new Proposal.Value("Rs", "2.2 kΩ", "sets the current", Optional.of(up), Optional.of(down)),
                        new Proposal.Value("Q1", "BF245B", "the oscillator", Optional.empty(), Optional.empty())),
                List.of(new Proposal.Change("Ro", "5.6 kΩ", "8.2 kΩ", "output +39 %", 0.9, 1)),
                List.of(
                        new Proposal.Considered("clapp", "meets every line, after 1 changes", Optional.of(1.0)),
                        new Proposal.Considered("quartz", "its crystal is for 1.0000 MHz", Optional.empty())),
                meets ? List.of() : List.of(new GivesWay(Line.DISTANCE, "4 m", "3.1 m", "the field")),
                meets ? 0 : 0.96,
                List.of("a note"));
    }

    @Test
    void a_proposal_prints_and_keeps_to_its_schema() throws Exception {
        for (boolean meets : new boolean[] {true, false}) {
            valid("proposal.json", ProposeJson.of(proposal(meets), "proposed/build.yaml"));
            Screen page = new Screen();
            ProposeText.print("Tide sender", proposal(meets), "proposed/build.yaml", page.terminal);
            assertThat(page.answers())
                    .contains(
                            "Proposal for Tide sender", "pattern clapp", "2.7 kΩ", "supply current −4.5 %", "Looked at")
                    .doesNotContain("null", "Optional");
            assertThat(page.answers().contains("3.1 m instead of 4 m")).isEqualTo(!meets);
            assertThat(page.answers().lines().mapToInt(String::length).max().orElseThrow())
                    .isLessThanOrEqualTo(80);
        }
        ProposeAnswer.None none =
                new ProposeAnswer.None("no pattern serves", proposal(true).considered());
        valid("proposal.json", ProposeJson.of(none));
        ProposeText.print(none, screen.terminal);
        assertThat(screen.answers()).contains("No proposal: no pattern serves", "its crystal is for");
    }

    @Test
    void substitutes_print_and_keep_to_their_schema() throws Exception {
        Figure.Known volts =
                new Figure.Known(0.5, Unit.VOLT, 0.4, 0.7, "test circuit solved", "volts across 100 Ω", "");
        DeviceWindow window = new DeviceWindow(
                List.of(new DeviceWindow.Axis(
                        "saturation current", volts, volts, new Figure.Missing("most", "works to 46 mA"))),
                new DeviceWindow.Test(List.of("Gate to 0 V."), List.of(volts), "All four corners work."));
        SubstituteReport devices = new SubstituteReport.Devices(
                "Q1",
                "BF256B",
                0.97,
                List.of(
                        new SubstituteReport.Row(
                                "J310",
                                SubstituteReport.Fit.WITH_A_CHANGE,
                                "Rs 1 kΩ → 3.3 kΩ",
                                OptionalDouble.of(1),
                                "output −3.0 %"),
                        new SubstituteReport.Row(
                                "J113", SubstituteReport.Fit.NOT, "", OptionalDouble.empty(), "it does not oscillate")),
                Optional.of(window),
                List.of("a note"));
        SubstituteReport values = new SubstituteReport.Values(
                "Cf",
                "100 pF",
                1,
                Optional.of(new ValueRange("Cf", 100e-12, Unit.FARAD, 82e-12, 120e-12, List.of(), Optional.empty())),
                List.of(new SubstituteReport.Combination(
                        "82 pF and 18 pF in parallel", volts, 0.01, "hardly anything changes", 1)),
                List.of());
        for (SubstituteReport report : List.of(devices, values)) {
            valid("substitutes.json", SubstituteJson.of(report));
            Screen page = new Screen();
            SubstituteText.print(report, page.terminal);
            assertThat(page.answers()).contains("In place of " + report.part()).doesNotContain("null", "Optional");
            if (report == devices)
                assertThat(page.answers()).as("no share where none was solved").containsPattern("J113 +– +it does not");
            assertThat(page.answers().lines().mapToInt(String::length).max().orElseThrow())
                    .isLessThanOrEqualTo(80);
        }
        SubstituteText.print(devices, screen.terminal);
        SubstituteText.print(values, screen.terminal);
        assertThat(screen.answers()).contains("82 pF to 120 pF, the trimmer turned back");
        assertThat(screen.answers()).contains("With a change", "Does not do", "400 mV to 700 mV", "works to 46 mA");
    }

    @Test
    void nothing_is_overwritten_and_that_is_told_before_the_work() throws Exception {
        Files.writeString(
                here.resolve("build.yaml"),
                "galena: 1\nintent: {carrier: 999 kHz, programme: {level: 1 V, band: 60 Hz..4 kHz}}\n");
        Path proposed = Files.createDirectories(here.resolve("proposed"));
        Files.writeString(proposed.resolve("build.yaml"), "mine");
        assertThat(screen.run("propose", here)).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.remarks()).contains("has a build.yaml already", "--into FOLDER");
        assertThat(proposed.resolve("build.yaml")).hasContent("mine");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--heard-by|valve|no class of set is called",
                "--count|3|proven by 20",
                "--pattern|clap|Nearest: clapp",
            })
    void options_are_checked(String option, String value, String told) throws Exception {
        Files.writeString(
                here.resolve("build.yaml"),
                "galena: 1\nintent: {carrier: 999 kHz, programme: {level: 1 V, band: 60 Hz..4 kHz}}\n");
        assertThat(screen.run("propose", here, option, value)).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.remarks()).contains(told);
        assertThat(here.resolve("proposed")).doesNotExist();
    }
}
