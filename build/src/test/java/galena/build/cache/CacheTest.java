package galena.build.cache;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.type.TypeReference;
import galena.build.DemoBuild;
import galena.build.cache.Cache.Slot;
import galena.build.fault.Fault;
import galena.build.fault.FaultTree;
import galena.build.fault.Faults;
import galena.build.fault.Reading;
import galena.build.fault.Reading.What;
import galena.build.fault.Stage;
import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.folder.Overlay;
import galena.build.quantity.Unit;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CacheTest {
    private static final Slot<List<Figure>> FIGURES = new Slot<>("figures", "test 1", new TypeReference<>() {});
    private static final List<Figure> SOME = List.of(
            new Figure.Known(1.0 / 3, Unit.VOLT, 0.1, 0.5, "basis", "voltage", "TP1"),
            new Figure.Missing("carrier", "it does not oscillate"));

    @TempDir
    private Path place;

    private BuildFolder folder;
    private List<Fault> faults;

    @BeforeEach
    void open() throws Exception {
        folder = DemoBuild.in(place);
        faults = Faults.of(folder.build(), Overlay.NONE);
    }

    @Test
    void what_is_kept_comes_back_equal_to_the_last_bit() throws Exception {
        cache().keep(FIGURES, SOME);
        assertThat(cache().kept(FIGURES)).contains(SOME);
    }

    @Test
    void trees_come_back_with_faults_that_still_change_circuits() throws Exception {
        Slot<List<FaultTree>> slot = new Slot<>("trees", "test 1", new TypeReference<>() {});
        Fault fault = faults.get(3);
        FaultTree.Window window = new FaultTree.Window(1, 2);
        FaultTree tree = new FaultTree(
                new Stage("supply", List.of("Cb")),
                new FaultTree.Ask(
                        new Reading(What.CARRIER, "", ""),
                        List.of(
                                new FaultTree.Branch(
                                        Optional.empty(), false, new FaultTree.Suspects(List.of(fault), false)),
                                new FaultTree.Branch(
                                        Optional.of(window), true, new FaultTree.Suspects(List.of(), true)))),
                List.of(new FaultTree.Betrayal(fault, new Reading(What.SUPPLY, "", ""), window, OptionalDouble.of(3))),
                List.of(),
                List.of());
        cache().keep(slot, List.of(tree));
        FaultTree back = cache().kept(slot).orElseThrow().get(0);
        assertThat(back).isEqualTo(tree);
        assertThat(back.betrayals().get(0).fault()).isSameAs(fault);
    }

    @Test
    void an_entry_is_passed_over_when_anything_it_came_from_differs() throws Exception {
        cache().keep(FIGURES, SOME);
        assertThat(cache().kept(new Slot<>("figures", "test 2", FIGURES.type())))
                .isEmpty();
        assertThat(Cache.of(folder, Overlay.NONE.set("Ct", 0.2), faults).kept(FIGURES))
                .isEmpty();
        BuildFolder changed = DemoBuild.in(place, "Rs:  {resistor: 3.3 kΩ", "Rs:  {resistor: 3.9 kΩ");
        assertThat(Cache.of(changed, Overlay.NONE, faults).kept(FIGURES)).isEmpty();
        assertThat(Cache.of(DemoBuild.in(place), Overlay.NONE, faults).kept(FIGURES))
                .contains(SOME);
    }

    @Test
    void a_damaged_entry_is_passed_over_and_written_anew() throws Exception {
        cache().keep(FIGURES, SOME);
        String whole = Files.readString(entry());
        for (String damage : List.of(
                "",
                "{",
                whole.substring(0, whole.length() / 2),
                "[]",
                "null",
                whole.replace("\"unit\":\"VOLT\"", "\"unit\":\"ELL\""),
                whole.replace("galena.build.figure", "java.lang"))) {
            Files.write(entry(), damage.getBytes(StandardCharsets.UTF_8));
            assertThat(cache().kept(FIGURES)).as(damage).isEmpty();
        }
        cache().keep(FIGURES, SOME);
        assertThat(cache().kept(FIGURES)).contains(SOME);
    }

    @Test
    void the_whole_cache_may_be_deleted_or_forbidden() throws Exception {
        Path where = Layout.CACHE.in(folder.folder());
        Files.writeString(where, "a file where the cache would be");
        cache().keep(FIGURES, SOME);
        assertThat(cache().kept(FIGURES)).isEmpty();
        Files.delete(where);
        cache().keep(FIGURES, SOME);
        assertThat(cache().kept(FIGURES)).contains(SOME);
    }

    @Test
    void it_does_not_grow_for_ever() throws Exception {
        for (int k = 0; k < 20; k++)
            Cache.of(folder, Overlay.NONE.set("Ct", k / 20.0), faults).keep(FIGURES, SOME);
        try (Stream<Path> all = Files.list(Layout.CACHE.in(folder.folder()))) {
            assertThat(all.count()).isLessThanOrEqualTo(6);
        }
    }

    private Cache cache() throws Exception {
        return Cache.of(folder, Overlay.NONE, faults);
    }

    private Path entry() throws Exception {
        try (Stream<Path> all = Files.list(Layout.CACHE.in(folder.folder()))) {
            return all.findFirst().orElseThrow();
        }
    }
}
