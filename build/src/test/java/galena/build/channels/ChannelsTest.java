package galena.build.channels;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.source.BadInputException;
import galena.trade.channel.RankedChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class ChannelsTest {
    private static final Channels.Question QUESTION =
            Channels.Question.of("both", List.of(Channels.Question.USUAL_INTERMEDIATE));

    @TempDir
    private Path folder;

    private BuildFolder build(String intent) throws Exception {
        Files.writeString(
                Layout.BUILD.in(folder),
                "galena: 1\n" + intent + "parts:\n  R1: {resistor: 1k, from: a, to: ground}\n"
                        + "  R2: {resistor: 1k, from: a, to: ground}\n");
        return BuildFolder.open(folder);
    }

    private Channels channels(String intent) throws Exception {
        return Channels.of(build(intent), QUESTION);
    }

    private String problem(String intent) throws Exception {
        BuildFolder build = build(intent);
        return String.valueOf(catchThrowableOfType(BadInputException.class, () -> Channels.of(build, QUESTION))
                .getMessage());
    }

    private static RankedChannel at(Channels channels, double frequency) {
        return channels.ranked().stream()
                .filter(c -> c.frequency() == frequency)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void the_raster_comes_from_the_rules_or_is_written() throws Exception {
        assertThat(channels("intent: {rules: us}\n").raster().spacing()).isEqualTo(10_000);
        assertThat(channels("intent: {rules: cept}\n").ranked()).hasSize(120);
        assertThat(channels("intent: {raster: 9 kHz}\n").raster().spacing()).isEqualTo(9_000);
        Channels odd = channels("intent: {rules: us, raster: 9 kHz}\n");
        assertThat(odd.raster().spacing()).isEqualTo(9_000);
        assertThat(odd.notes()).anyMatch(note -> note.contains("which have 10 kHz"));
    }

    @Test
    void without_a_raster_or_with_a_strange_one_it_is_asked_for() throws Exception {
        assertThat(problem("")).contains("names neither a raster nor rules", "Write intent: {raster: 9 kHz}");
        assertThat(problem("intent: {raster: 5 kHz}\n")).contains("build.yaml:2:18", "\"5 kHz\" is no raster");
    }

    @Test
    void a_station_on_a_channel_counts_by_its_strength_and_time() throws Exception {
        Files.writeString(
                Layout.STATIONS.in(folder),
                """
                galena: 1
                stations:
                  - {carrier: 900 kHz, heard: night, strength: strong, name: far}
                  - {carrier: 1413 kHz}
                """);
        Channels channels = channels("intent: {rules: cept, carrier: 900 kHz}\n");
        assertThat(channels.wanted().orElseThrow().nightPoints()).isGreaterThanOrEqualTo(60);
        assertThat(channels.wanted().orElseThrow().dayPoints()).isLessThan(60);
        assertThat(at(channels, 1413e3).dayPoints()).isGreaterThanOrEqualTo(30); // fair, always: both left out
        assertThat(channels.notes()).noneMatch(note -> note.startsWith("No stations"));
    }

    @Test
    void what_the_drawer_holds_is_tried_and_the_best_channel_comes_first() throws Exception {
        Files.writeString(
                Layout.DRAWER.in(folder), "galena: 1\ncrystals: [4 MHz]\nresonators: [4.5 MHz]\ncounters: [2, 4, 5]\n");
        Channels channels = channels("intent: {rules: us}\n");
        assertThat(channels.ways()).anySatisfy(way -> {
            assertThat(way.landing().channel()).isEqualTo(1e6);
            assertThat(way.landing().recipe()).isEqualTo("crystal 4 MHz /4");
            assertThat(way.landing().error()).isZero();
        });
        List<Integer> ranks = channels.ways().stream()
                .filter(w -> w.landing().isReachable())
                .map(Channels.Way::rank)
                .toList();
        assertThat(ranks).isSorted();
    }

    @Test
    void an_empty_drawer_and_an_empty_list_are_told() throws Exception {
        assertThat(channels("intent: {rules: us}\n").notes())
                .anyMatch(n -> n.startsWith("No stations are listed"))
                .anyMatch(n -> n.contains("no crystals"));
    }

    @Test
    void a_counter_that_divides_by_a_part_is_refused() throws Exception {
        Files.writeString(Layout.DRAWER.in(folder), "galena: 1\ncrystals: [4 MHz]\ncounters: [2.5]\n");
        assertThat(problem("intent: {rules: us}\n")).contains("counters: \"2.5\" is no whole number");
    }
}
