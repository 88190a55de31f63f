package galena.packet.schematic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import galena.build.folder.Build;
import galena.packet.schematic.Schematic.Care;
import galena.packet.schematic.Schematic.Pin;
import galena.packet.schematic.Schematic.Symbol;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import org.xml.sax.InputSource;

class SchematicTest {
    static final List<String> SOME = List.of("demo", "positive-ground", "stage");
    static final List<String> OTHERS = Stream.concat(SomeBuilds.NAMES.stream(), SomeBuilds.PATTERNS.stream())
            .filter(name -> !SOME.contains(name))
            .toList();

    /** Crossings in the reviewed drawings: where the bias of a long-tailed pair passes the tail, or its collector the feed, say. */
    private static final int MOST_CROSSINGS = 3;

    @ParameterizedTest
    @FieldSource("SOME")
    void drawings_are_readable_and_look_as_reviewed(String name) throws IOException {
        reviewed(name);
    }

    @ParameterizedTest
    @FieldSource("OTHERS")
    @Tag("long")
    void more_drawings_are_readable_and_look_as_reviewed(String name) throws IOException {
        reviewed(name);
    }

    private static void reviewed(String name) throws IOException {
        Build build = SomeBuilds.named(name);
        Schematic drawing = Schematic.of(build);
        Readability readability = Readability.of(drawing);
        assertThat(readability.faults()).isEmpty();
        assertThat(readability.crossings()).isLessThanOrEqualTo(MOST_CROSSINGS);
        shows(build, drawing);
        stored(name + ".svg", SchematicSvg.draw(drawing));
    }

    /** Seeds 1 to 100. */
    @Test
    void builds_made_by_chance_are_readable() {
        List<String> faults = judged(LongStream.rangeClosed(1, 100).toArray());
        assertThat(faults).isEmpty();
    }

    /** Seeds 101 to 1000. */
    @Test
    @Tag("long")
    void many_builds_made_by_chance_are_readable() {
        List<String> faults = judged(LongStream.rangeClosed(101, 1000).toArray());
        assertThat(faults).isEmpty();
    }

    private static List<String> judged(long[] seeds) {
        List<String> faults = new ArrayList<>();
        for (long seed : seeds) {
            Build build = SomeBuilds.random(seed);
            Schematic drawing = Schematic.of(build, Care.HASTE, () -> false);
            shows(build, drawing);
            for (String fault : Readability.of(drawing).faults()) faults.add("seed " + seed + ": " + fault);
        }
        return faults;
    }

    /** Every pin of the build is in the drawing, on its net. */
    private static void shows(Build build, Schematic drawing) {
        List<String> drawn = new ArrayList<>();
        for (Symbol symbol : drawing.symbols())
            for (int p = 0; p < symbol.pins().size(); p++) {
                Pin pin = symbol.pins().get(p);
                if (symbol.parts().isEmpty()) continue;
                String part = symbol.parts().get(symbol.parts().size() == 2 ? p / 2 : 0);
                drawn.add(part + "." + pin.name() + " on " + pin.net());
            }
        List<String> wanted = new ArrayList<>();
        build.parts().values().forEach(part -> part.pins()
                .forEach((pin, net) -> wanted.add(part.name() + "." + pin + " on " + net)));
        assertThat(drawn).containsAll(wanted);
    }

    @Test
    void the_same_build_gives_the_same_drawing() {
        Build build = SomeBuilds.named("stage");
        List<String> drawings = IntStream.range(0, 3)
                .mapToObj(k -> SchematicSvg.draw(Schematic.of(build, Care.HASTE, () -> false)))
                .distinct()
                .toList();
        assertThat(drawings).hasSize(1);
    }

    @Test
    void drawing_stops_when_told() {
        Build build = SomeBuilds.named("demo");
        assertThatThrownBy(() -> Schematic.of(build, () -> true)).isInstanceOf(CancellationException.class);
    }

    @Test
    void the_reader_notices_what_is_wrong() {
        Schematic good = Schematic.of(SomeBuilds.named("stage"), Care.HASTE, () -> false);
        List<Schematic.Wire> torn =
                good.wires().stream().filter(w -> !w.net().equals("out")).toList();
        assertThat(Readability.of(with(good, torn)).faults()).anyMatch(f -> f.contains("out is drawn in"));

        List<Schematic.Wire> through = new ArrayList<>(good.wires());
        Symbol q1 = good.symbols().stream()
                .filter(s -> s.parts().contains("Q1"))
                .findFirst()
                .orElseThrow();
        through.add(new Schematic.Wire("gate", q1.x() - 60, q1.y() + 5, q1.x() + 60, q1.y() + 5));
        assertThat(Readability.of(with(good, through)).faults()).contains("a wire of gate runs through Q1");

        List<Schematic.Wire> joined = new ArrayList<>(good.wires());
        good.wires().stream()
                .filter(w -> w.net().equals("out"))
                .forEach(w -> joined.add(new Schematic.Wire("foot", w.x1(), w.y1(), w.x2(), w.y2())));
        assertThat(Readability.of(with(good, joined)).faults())
                .contains("a wire of out runs along one of foot")
                .anyMatch(f -> f.startsWith("drawn as one"));
    }

    private static Schematic with(Schematic drawing, List<Schematic.Wire> wires) {
        return new Schematic(
                drawing.title(),
                drawing.width(),
                drawing.height(),
                drawing.symbols(),
                wires,
                drawing.junctions(),
                drawing.words());
    }

    @Test
    void svg_is_well_formed_and_stands_alone() throws Exception {
        String svg = SchematicSvg.draw(Schematic.of(SomeBuilds.named("stage"), Care.HASTE, () -> false));
        var document =
                DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
        assertThat(document.getElementsByTagName("title").item(0).getTextContent())
                .isEqualTo("Schematic of Output stage alone");
        assertThat(svg).doesNotContain("href", "<script", "@import", "url(");
    }

    /** Pinned: reviewed by eye. Delete the stored copy and run again to accept a change. */
    private static void stored(String name, String drawn) throws IOException {
        Path copy = Path.of("src/test/resources/schematics", name);
        if (Files.notExists(copy)) {
            Files.createDirectories(copy.getParent());
            Files.writeString(copy, drawn, StandardCharsets.UTF_8);
            throw new UncheckedIOException(new IOException("look at " + copy + ", then run again"));
        }
        assertThat(drawn).isEqualTo(Files.readString(copy, StandardCharsets.UTF_8));
    }
}
