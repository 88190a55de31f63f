package galena.desk;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaPackage;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.Location;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The rules of the house. A failure says what to move where; the arrows are those of each module's README. */
final class ArchitectureTest {
    private static final JavaClasses GALENA = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .withImportOption(ArchitectureTest::isNotOfTests)
            .importPackages("galena");

    private static final List<String> MODULES =
            List.of("engine", "trade", "signal", "build", "bench", "packet", "desk");

    /** Module to the modules it may use. */
    private static final Map<String, List<String>> MAY_USE = Map.of(
            "engine", List.of(),
            "trade", List.of(),
            "signal", List.of(),
            "build", List.of("engine", "trade", "signal"),
            "bench", List.of("build", "signal"),
            "packet", List.of("build", "bench"),
            "desk", List.of("engine", "trade", "signal", "build", "bench", "packet"));

    private static final Map<String, String> REMEDY = Map.of(
            "engine", "hand it in as a plain number or a part: what builds know is turned into a circuit in build",
            "trade", "trade holds formulas and data only: move what needs a circuit up to build",
            "signal", "signal measures samples only: move what knows builds or captures up to build or bench",
            "build", "move what reads instruments to bench, what is published to packet, what is printed to desk",
            "bench", "ask build for the circuit's answers; move what is published to packet",
            "packet", "packet draws what it is handed: compute it in build or bench and pass the record",
            "desk", "");

    /** The module {@code proof} is for tests, also where it lies on the path as plain classes. */
    private static boolean isNotOfTests(Location location) {
        return !location.contains("/proof/");
    }

    @ParameterizedTest
    @ValueSource(strings = {"engine", "trade", "signal", "build", "bench", "packet"})
    void a_module_uses_only_those_below_it(String module) {
        for (String other : MODULES) {
            if (other.equals(module) || MAY_USE.get(module).contains(other)) continue;
            noClasses()
                    .that()
                    .resideInAPackage("galena." + module + "..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAPackage("galena." + other + "..")
                    .because(module + " may not use " + other + "; " + REMEDY.get(module))
                    .allowEmptyShould(true)
                    .check(GALENA);
        }
    }

    @Test
    void packages_form_no_cycle() {
        slices().matching("galena.(**)")
                .should()
                .beFreeOfCycles()
                .because("of two packages that need each other, move what both need into the lower one")
                .check(GALENA);
    }

    @Test
    void physics_stays_out_of_the_commands() {
        noClasses()
                .that()
                .resideInAPackage("galena.desk.command..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "galena.engine.[circuit|equations|law|linear|operating|part|startup]..", "galena.trade..")
                .because("a command parses, calls one method of build, bench or packet and hands on a record;"
                        + " move what computes to build")
                .allowEmptyShould(true)
                .check(GALENA);
    }

    @Test
    void nothing_prints_but_the_console() {
        noClasses()
                .that()
                .resideOutsideOfPackage("galena.desk.console..")
                .should()
                .accessField(System.class, "out")
                .orShould()
                .accessField(System.class, "err")
                .because("a screen may lack characters and colours; print through galena.desk.console.Terminal")
                .check(GALENA);
    }

    @Test
    void packages_are_named_for_what_they_know() {
        classes()
                .should()
                .resideOutsideOfPackages(
                        "..util..", "..utils..", "..common..", "..impl..", "..manager..", "..helper..", "..misc..")
                .because("such a name says nothing; name the package for what its classes know")
                .check(GALENA);
    }

    @Test
    void every_package_has_a_page_and_knows_nulls() {
        List<String> without = new ArrayList<>();
        for (JavaPackage room : GALENA.getPackage("galena").getSubpackagesInTree()) {
            if (room.getClasses().isEmpty()) continue;
            if (room.tryGetPackageInfo().isEmpty() || !room.isAnnotatedWith(NullMarked.class))
                without.add(room.getName());
        }
        assertThat(without)
                .as("packages that need a package-info.java with @NullMarked")
                .isEmpty();
    }

    @Test
    void the_rules_see_every_module() {
        assertThat(MAY_USE.keySet()).containsExactlyInAnyOrderElementsOf(MODULES);
        for (String module : MODULES) {
            assertThat(GALENA.containPackage("galena." + module)).as(module).isTrue();
        }
    }
}
