package galena.build.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import galena.build.quantity.Quantity;
import galena.build.source.BadInputException;
import galena.build.source.Edit;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BuildFolderTest {
    @TempDir
    Path folder;

    @BeforeEach
    void write() throws Exception {
        Files.writeString(folder.resolve("build.yaml"), Builds.STAGE);
    }

    private void file(Layout layout, String text) throws Exception {
        Path file = layout.in(folder);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }

    private List<String> problems() {
        BadInputException bad = catchThrowableOfType(BadInputException.class, () -> BuildFolder.open(folder));
        return bad.problems().stream().map(p -> p.place() + " " + p.found()).toList();
    }

    @Test
    void a_folder_with_a_build_alone_is_enough() throws Exception {
        BuildFolder open = BuildFolder.open(folder);
        assertThat(open.drawer()).isEqualTo(Drawer.EMPTY);
        assertThat(open.stations()).isEmpty();
        assertThat(open.log()).isEmpty();
        assertThat(open.calibration()).isEmpty();
        assertThat(BuildFolder.open(folder.resolve("build.yaml")).build().parts())
                .hasSize(7);
        assertThat(open.build().name()).isEqualTo(folder.getFileName().toString());
    }

    @Test
    void every_file_has_its_place_and_is_read() throws Exception {
        file(
                Layout.DRAWER,
                "galena: 1\nresistors: [1k, 4k7]\ntrimmers: [5..60 pF]\ncoils:\n  - {coil: 180 µH, q: 85 @ 1 MHz}\ndevices: [BF256B]\n");
        file(
                Layout.STATIONS,
                "galena: 1\nstations:\n  - {carrier: 990 kHz, heard: night, name: the far one}\n  - {carrier: 1008 kHz}\n");
        file(
                Layout.LOG,
                "galena: 1\nreadings:\n  - {carrier: 987.2 kHz, uncertainty: 50 Hz, at: TP1, when: 2026-03-07 19:30, how: counter}\n  - {second_harmonic: -38 dBc}\n");
        file(
                Layout.CALIBRATION,
                "galena: 1\naccepted: 2026-03-08\nparts:\n  Lt: {factor: 0.985}\n  Q1: {saturation_current: 7 mA, pinch_off: -2 V}\nstrays:\n  - {from: drain, to: ground, capacitance: 2 pF}\n");
        BuildFolder open = BuildFolder.open(folder);
        assertThat(open.drawer().resistors()).extracting(Quantity::value).containsExactly(1000.0, 4700.0);
        assertThat(open.drawer().coils().get(0).q()).isPresent();
        assertThat(open.stations()).extracting(Station::heard).containsExactly("night", "always");
        assertThat(open.log().get(0).value().value()).isEqualTo(987.2e3);
        assertThat(open.log().get(1).what()).isEqualTo(LogEntry.What.SECOND_HARMONIC);
        assertThat(open.calibration()
                        .orElseThrow()
                        .parts()
                        .get("Lt")
                        .factor()
                        .orElseThrow()
                        .value())
                .isEqualTo(0.985);
    }

    @Test
    void problems_of_all_files_come_at_once() throws Exception {
        file(Layout.DRAWER, "galena: 1\nresistors: [1k, 4700]\n");
        file(Layout.STATIONS, "galena: 1\nstation: []\n");
        file(
                Layout.LOG,
                "galena: 1\nreadings:\n  - {carrier: 987, at: TP9}\n  - {volume: 3}\n  - {voltage: 3 V, at: TP9, when: yesterday}\n  - {voltage: 3 V, at: TP9}\n");
        file(Layout.CALIBRATION, "accepted: 2026-03-08\nparts:\n  Lx: {factor: 0.985}\n");
        assertThat(problems())
                .containsExactly(
                        "bench/log.yaml:3:15 \"987\" has no unit",
                        "bench/log.yaml:4:5 names no kind of reading",
                        "bench/log.yaml:5:35 \"yesterday\" can't be read here",
                        "calibration.yaml:1:1 names no version",
                        "calibration.yaml:3:7 the build has no part \"Lx\"",
                        "drawer.yaml:2:17 \"4700\" has no unit",
                        "stations.yaml:1:1 lacks the key stations",
                        "stations.yaml:2:1 is no key of a list of stations");
    }

    @Test
    void a_reading_at_an_unknown_point_is_told() throws Exception {
        file(Layout.LOG, "galena: 1\nreadings:\n  - {voltage: 3 V, at: TP9}\n");
        assertThat(problems()).containsExactly("bench/log.yaml:3:24 the build has no test point \"TP9\"");
    }

    @Test
    void a_missing_folder_and_a_folder_without_a_build_are_told() throws Exception {
        Path none = folder.resolve("none");
        BadInputException bad = catchThrowableOfType(BadInputException.class, () -> BuildFolder.open(none));
        assertThat(bad.problems().get(0).found()).isEqualTo("there is no such folder");
        Files.delete(folder.resolve("build.yaml"));
        assertThat(problems()).containsExactly("build.yaml:1:1 there is no such file");
    }

    @Test
    void an_edit_is_written_and_read_again() throws Exception {
        BuildFolder open = BuildFolder.open(folder).edit(Edit.change("parts.Ct.set", "40 %", "43 %"));
        assertThat(open.build().part("Ct").orElseThrow().position().orElseThrow())
                .isEqualTo(0.43);
        assertThat(folder.resolve("build.yaml")).hasContent(Builds.STAGE.replace("40 %", "43 %"));
    }

    @Test
    void an_edit_that_spoils_the_build_is_refused_and_writes_nothing() throws Exception {
        BuildFolder open = BuildFolder.open(folder);
        BadInputException bad = catchThrowableOfType(
                BadInputException.class, () -> open.edit(Edit.change("parts.Ct.set", "40 %", "143 %")));
        assertThat(bad.problems().get(0).found()).isEqualTo("\"143 %\" is too large");
        assertThat(folder.resolve("build.yaml")).hasContent(Builds.STAGE);
    }

    @Test
    void the_cache_key_follows_everything_a_prediction_depends_on_and_nothing_else() throws Exception {
        BuildFolder open = BuildFolder.open(folder);
        String key = CacheKey.of(open, Overlay.NONE, "1");
        assertThat(CacheKey.of(BuildFolder.open(folder), Overlay.NONE, "1"))
                .isEqualTo(key)
                .hasSize(64);
        assertThat(CacheKey.of(open, Overlay.NONE, "2")).isNotEqualTo(key);
        assertThat(CacheKey.of(open, Overlay.NONE.set("Ct", 0.4), "1")).isNotEqualTo(key);
        assertThat(CacheKey.of(open, Overlay.NONE.atTemperature(30), "1")).isNotEqualTo(key);
        file(Layout.STATIONS, "galena: 1\nstations: []\n");
        assertThat(CacheKey.of(BuildFolder.open(folder), Overlay.NONE, "1")).isEqualTo(key);
        file(Layout.DRAWER, "galena: 1\n");
        assertThat(CacheKey.of(BuildFolder.open(folder), Overlay.NONE, "1")).isNotEqualTo(key);
        Files.delete(Layout.DRAWER.in(folder));
        Files.writeString(folder.resolve("build.yaml"), Builds.STAGE.replace("1 MHz", "2 MHz"));
        assertThat(CacheKey.of(BuildFolder.open(folder), Overlay.NONE, "1")).isNotEqualTo(key);
    }
}
