package galena.build.robust;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Seeds are fixed; {@link RobustnessRun} draws any of them again. */
class RobustnessTest {
    /** Of the builds with a growing pair; the rest is kept under {@code failures/} and looked into. */
    private static final double ANSWERED = 0.995;

    /** In the short run one unanswered build of 200 is already half a percent. */
    private static final double ANSWERED_OF_FEW = 0.99;

    /** Of the 500 spoilt ones: kept under {@code failures/}, too. */
    private static final int SPOILT_KEPT = 1;

    private static final Path KEPT = Path.of("..", "failures");

    @Test
    void two_hundred_random_builds_end_in_an_orbit_or_a_named_verdict() throws IOException {
        check(RobustnessRun.random(1, 200, null), ANSWERED_OF_FEW);
    }

    @Test
    @Tag("long")
    void two_thousand_random_builds_end_in_an_orbit_or_a_named_verdict() throws IOException {
        Tally tally = RobustnessRun.random(1, 2000, Path.of("target", "failures"));
        check(tally, ANSWERED);
        assertThat(tally.slowest()).as(tally.toString()).isLessThan(Tally.SLOW);
    }

    @Test
    void a_hundred_spoilt_builds_get_a_named_fault_or_a_true_verdict() throws IOException {
        checkSpoilt(RobustnessRun.spoilt(1, 100, null), 0);
    }

    @Test
    @Tag("long")
    void five_hundred_spoilt_builds_get_a_named_fault_or_a_true_verdict() throws IOException {
        checkSpoilt(RobustnessRun.spoilt(1, 500, Path.of("target", "failures")), SPOILT_KEPT);
    }

    private static void check(Tally tally, double answered) {
        nothingRaw(tally);
        assertThat(tally.answered()).as(tally.toString()).isGreaterThanOrEqualTo(answered);
    }

    private static void checkSpoilt(Tally tally, int kept) {
        nothingRaw(tally);
        assertThat(tally.of(Trial.End.FAULT)).as(tally.toString()).isPositive();
        assertThat(tally.unansweredCount()).as(tally.toString()).isLessThanOrEqualTo(kept);
    }

    private static void nothingRaw(Tally tally) {
        for (Trial.End never : List.of(Trial.End.THREW, Trial.End.HUNG, Trial.End.NOT_A_NUMBER, Trial.End.CONTRADICTED))
            assertThat(tally.of(never)).as(never + " in " + tally).isZero();
    }

    static Stream<Path> kept() throws IOException {
        try (Stream<Path> files = Files.list(KEPT)) {
            return files.filter(file -> file.toString().endsWith(".yaml")).sorted().toList().stream();
        }
    }

    /** When one of them finds its orbit, its file has done its work: move it to the tests that it led to. */
    @ParameterizedTest
    @MethodSource("kept")
    void a_build_kept_for_its_failure_still_ends_with_a_reason(Path file) throws Exception {
        Trial trial = KeptBuild.read(file).trial();
        assertThat(trial.end())
                .as(file + ": " + trial.detail())
                .isNotIn(Trial.End.THREW, Trial.End.HUNG, Trial.End.NOT_A_NUMBER);
        assertThat(trial.detail()).isNotBlank();
    }
}
