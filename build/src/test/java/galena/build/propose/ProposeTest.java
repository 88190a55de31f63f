package galena.build.propose;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import galena.build.attempt.Line;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.predict.Progress;
import galena.build.source.BadInputException;
import galena.build.spread.Conditions;
import galena.build.spread.Spread;
import galena.build.spread.SpreadReport;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProposeTest {
    @TempDir
    private Path folder;

    /** The demo's intent and supply, without its parts. */
    private Wish demo() throws Exception {
        try (InputStream in = BuildFolder.class.getResourceAsStream("/galena/demo/build.yaml")) {
            assertThat(in).isNotNull();
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            Files.writeString(folder.resolve("build.yaml"), text.substring(0, text.indexOf("\nparts:") + 1));
        }
        return Wish.open(folder);
    }

    private static Propose.Request request(String pattern, String set) {
        return new Propose.Request(
                pattern.isEmpty() ? Optional.empty() : Optional.of(pattern),
                1,
                40,
                set,
                Propose.Request.USUAL.surroundings());
    }

    @Test
    void the_demos_intent_is_met_by_the_pattern_to_begin_with() throws Exception {
        Proposal proposal =
                (Proposal) Propose.of(demo(), request("grounded-gate-colpitts", "rod-set"), Progress.SILENT);

        assertThat(proposal.meets()).isTrue();
        assertThat(proposal.yield().value()).isGreaterThanOrEqualTo(0.95);
        assertThat(proposal.verdicts())
                .extracting(Proposal.Verdict::line)
                .contains(Line.STARTS, Line.ON_CHANNEL, Line.HARMONICS, Line.DEPTH, Line.LEVEL, Line.RUNTIME)
                .contains(Line.DISTANCE, Line.LIMIT, Line.BAND);
        assertThat(proposal.givesWay()).isEmpty();
        written(proposal);
        neighbours(proposal);
        again(proposal);
    }

    /** Readable, commented, and the builder's own lines word for word. */
    private static void written(Proposal proposal) {
        assertThat(proposal.text())
                .startsWith("galena: 1\n")
                .contains("  carrier: 999 kHz              # channel 111 of the 9 kHz raster\n")
                .contains("supply: {battery: 6xAA-NiMH}\n")
                .contains("turns of", "a turn less gives", "on a tube", "of 40 copies meet it");
        for (Proposal.Value value : proposal.values())
            assertThat(value.reason()).as(value.part()).isNotBlank();
        assertThat(proposal.text().lines().filter(l -> l.length() > 120 && !l.contains("loopstick")))
                .isEmpty();
    }

    private static void neighbours(Proposal proposal) {
        List<Proposal.Value> varied =
                proposal.values().stream().filter(v -> v.up().isPresent()).toList();
        assertThat(varied).extracting(Proposal.Value::part).contains("Cp", "Cf", "Rs", "Re", "Ro", "La");
        assertThat(varied)
                .allSatisfy(v -> assertThat(v.up().orElseThrow().effects()).isNotBlank());
        Proposal.Value cf =
                varied.stream().filter(v -> v.part().equals("Cf")).findFirst().orElseThrow();
        assertThat(cf.up().orElseThrow().effects()).contains("trimmer");
    }

    /** What was written is what was proven: a spread of its own, asked of the text alone. */
    private void again(Proposal proposal) throws Exception {
        Path own = Files.createDirectories(folder.resolve("own"));
        Files.writeString(own.resolve("build.yaml"), proposal.text());
        SpreadReport report = Spread.of(BuildFolder.open(own), Overlay.NONE, Conditions.FULL, 40, 1, Progress.SILENT);
        assertThat(report.yield().value()).isGreaterThanOrEqualTo(0.95);
    }

    @Tag("long")
    @ParameterizedTest
    @CsvSource({
        "harbour-master,rod-set",
        "attic,rod-set",
        "lapel,rod-set",
        "crystal-evening,crystal-set",
        "classroom,rod-set",
        "show-case,rod-set",
        "night-watch,rod-set",
        "old-tin,rod-set",
        "allotment,rod-set",
        "pocket-player,rod-set"
    })
    void an_intent_ends_in_a_build_inside_it_or_in_what_gives_way(String name, String set) throws Exception {
        ProposeAnswer answer = Propose.of(
                Wish.open(Intents.lay(name, folder.resolve(name))),
                new Propose.Request(Optional.empty(), 1, 200, set, Propose.Request.USUAL.surroundings()),
                Progress.SILENT);
        if (answer instanceof ProposeAnswer.None none) {
            assertThat(none.reason()).isNotBlank();
            assertThat(none.considered()).isNotEmpty();
            return;
        }
        Proposal proposal = (Proposal) answer;
        if (proposal.meets()) {
            assertThat(proposal.yield().value()).isGreaterThanOrEqualTo(0.95);
            assertThat(proposal.verdicts())
                    .allSatisfy(v ->
                            assertThat(v.meeting()).as(v.toString()).isGreaterThanOrEqualTo(v.ofCopies() ? 0.95 : 1));
        } else {
            assertThat(proposal.givesWay()).isNotEmpty().allSatisfy(g -> assertThat(g.possible())
                    .isNotEqualTo(g.wanted()));
        }
    }

    @Test
    void it_stops_when_asked() throws Exception {
        Wish wish = demo();
        Progress stopped = new Progress() {
            @Override
            public void at(double share, String doing) {
                // nobody listens
            }

            @Override
            public boolean cancelled() {
                return true;
            }
        };
        assertThatThrownBy(() -> Propose.of(wish, request("", "rod-set"), stopped))
                .isInstanceOf(CancellationException.class);
    }

    @Test
    void an_intent_without_a_carrier_and_a_slip_are_told_at_their_places() throws Exception {
        Files.writeString(folder.resolve("build.yaml"), "galena: 1\nintent: {modulation: 80 %}\n");
        assertThatThrownBy(() -> Wish.open(folder))
                .isInstanceOf(BadInputException.class)
                .hasMessageContaining("names no carrier");
        Files.writeString(folder.resolve("build.yaml"), "galena: 1\nintent:\n  carrier: 999 kV\n");
        assertThatThrownBy(() -> Wish.open(folder)).hasMessageContaining("build.yaml:3:12");
        assertThatThrownBy(() -> Propose.of(demo(), request("clap", "rod-set"), Progress.SILENT))
                .hasMessageContaining("Nearest: clapp");
    }
}
