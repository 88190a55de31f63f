package galena.build.folder;

import static org.assertj.core.api.Assertions.assertThat;

import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Problem;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class BuildReaderTest {
    @Test
    void reads_a_whole_build() throws BadInputException {
        Build build = Builds.read(Builds.EVERYTHING);
        assertThat(build.name()).isEqualTo("Lighthouse sender");
        assertThat(build.intent().carrier().map(Quantity::value)).contains(999e3);
        assertThat(build.intent().programme().orElseThrow().band().high().value())
                .isEqualTo(4500);
        assertThat(build.intent().harmonics().map(Quantity::value)).contains(-40.0);
        assertThat(build.supply().orElseThrow()).isInstanceOf(Supply.OfBattery.class);
        assertThat(build.parts().keySet()).startsWith("Lt", "Ls", "La", "Lf").hasSize(34);
        assertThat(build.parts().values()).extracting(PartEntry::kind).contains(PartKind.values());
        assertThat(build.adjustments()).containsExactly("Ls", "Ct", "Rp");
        PartEntry trimmer = build.part("Ct").orElseThrow();
        assertThat(trimmer.label()).isEqualTo("5..60 pF");
        assertThat(trimmer.position().orElseThrow()).isEqualTo(0.4);
        assertThat(trimmer.temperatureCoefficient()).isEqualTo(-750e-6);
        assertThat(trimmer.pins()).containsEntry("from", "drain").containsEntry("to", "source");
        assertThat(build.part("Cs").orElseThrow().tolerance()).isEqualTo(0.05);
        assertThat(build.part("Rs").orElseThrow().tolerance()).isEqualTo(PartKind.RESISTOR.usualTolerance());
        assertThat(build.strays()).containsExactly(new Stray("drain", "ground", Quantity.of(3e-12, Unit.FARAD)));
        assertThat(build.couplings()).extracting(c -> c.k().value()).containsExactly(0.002);
        assertThat(build.points().get("TP1").probe().orElseThrow().resistance()).isEqualTo(10e6);
        assertThat(build.points().get("TP2").probe().orElseThrow().capacitance())
                .isEqualTo(20e-12);
    }

    @Test
    void a_single_stage_without_intent_or_supply_is_a_build() throws BadInputException {
        Build build = Builds.read(
                """
                galena: 1
                parts:
                  V1: {voltage: 1 V, plus: a, minus: ground}
                  R1: {resistor: 1k, from: a, to: ground}
                """);
        assertThat(build.name()).isEqualTo("folder");
        assertThat(build.supply()).isEmpty();
    }

    /** One slip in the stage; where it is found, what is said, what helps. Every message that reading a build can give. */
    @ParameterizedTest
    @CsvFileSource(resources = "/slips/build.txt", delimiter = '|', quoteCharacter = '\0', encoding = "UTF-8")
    void each_slip_has_its_own_message(String old, String now, String where, String found, String remedy) {
        String was = text(old);
        assertThat(Builds.STAGE).contains(was);
        List<Problem> problems =
                Builds.problems(Builds.STAGE.replaceFirst(Pattern.quote(was), Matcher.quoteReplacement(text(now))));
        assertThat(problems).as(Problem.print(problems)).anySatisfy(p -> {
            assertThat(where(p)).isEqualTo(where);
            assertThat(p.found()).isEqualTo(found);
            if (!remedy.equals("`")) assertThat(p.remedy()).contains(remedy);
            assertThat(p.rule()).endsWith(".");
        });
    }

    private static String where(Problem problem) {
        return (problem.place().line() + ":" + problem.place().column() + " " + problem.path()).strip();
    }

    private static String text(String cell) {
        return cell.replace("\\n", "\n").replace("`", "");
    }

    @Test
    void all_problems_of_a_file_come_at_once_and_one_does_not_hide_or_make_another() {
        String bad = Builds.STAGE
                .replace("resistor: 1k, from: source", "resistor: 1 kF, from: source")
                .replace("5..60 pF", "5..60")
                .replace("at: drain", "at: drian")
                .replace("k: 0.1", "k: 2")
                .replace("q: 85 @ 1 MHz, ", "");
        assertThat(Builds.problems(bad)).extracting(p -> p.place().line()).containsExactly(4, 5, 7, 14, 16);
    }

    @Test
    void the_example_of_the_style_guide_prints_as_promised() {
        Problem problem =
                Builds.problems(Builds.STAGE.replace("5..60 pF", "5..60")).get(0);
        assertThat(problem.toString().lines())
                .containsExactly(
                        "build.yaml:5:17  parts.Ct.trimmer: \"5..60\" has no unit",
                        "  A trimmer takes a capacitance range. Nearest: 5..60 pF");
    }
}
