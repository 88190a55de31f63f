package galena.build.robust;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Seeds are fixed; {@link RobustnessRun} draws any of them again. */
class RobustnessTest {
    /** Of the builds with a growing pair; the rest is kept under {@code failures/} and looked into. */
    private static final double ANSWERED = 0.995;

    /** In the short run one unanswered build of 200 is already half a percent. */
    private static final double ANSWERED_OF_FEW = 0.99;

    /** Of the 500 spoilt ones: kept under {@code failures/}, too. */
    private static final int SPOILT_KEPT = 0;

    private static final Path KEPT = Path.of("..", "failures");
    private static final Path SOLVED = Path.of("src", "test", "resources", "once-lost");

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

    private static List<Path> kept(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".yaml"))
                    .sorted()
                    .toList();
        }
    }

    /** When one of them finds its orbit, its file has done its work: move it to {@link #SOLVED}. */
    @Test
    void builds_kept_for_their_failure_still_end_with_a_reason() throws Exception {
        for (Path file : kept(KEPT)) {
            Trial trial = KeptBuild.read(file).trial();
            assertThat(trial.end())
                    .as(file + ": " + trial.detail())
                    .isNotIn(Trial.End.THREW, Trial.End.HUNG, Trial.End.NOT_A_NUMBER);
            assertThat(trial.detail()).isNotBlank();
        }
    }

    /** Builds that were lost once, each by a fault of the method that has been mended since. */
    @Test
    void builds_that_were_lost_once_find_their_orbit() throws Exception {
        List<Path> files = kept(SOLVED);
        assertThat(files).isNotEmpty();
        for (Path file : files) {
            Trial trial = KeptBuild.read(file).trial();
            assertThat(trial.end()).as(file + ": " + trial.detail()).isEqualTo(Trial.End.ORBIT);
        }
    }
}
