package galena.packet.schematic;

import galena.build.folder.Build;
import galena.build.folder.Coupled;
import galena.packet.schematic.Lettering.Anchor;
import java.util.Comparator;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;

/**
 * A drawn schematic: symbols, wires, junctions and words at their places, y downwards, all in drawing units.
 *
 * @param title the build's name
 * @param width of the sheet
 * @param height of the sheet
 * @param symbols with their pins
 * @param wires level and upright
 * @param junctions where three or more wires of a net meet
 * @param words names, values, remarks
 */
public record Schematic(
        String title,
        int width,
        int height,
        List<Symbol> symbols,
        List<Wire> wires,
        List<Junction> junctions,
        List<Word> words) {
    /** A drawing with a fault in it is tried again, twice as long. */
    private static final int ROUNDS = 4;

    private static final long SEED = 1;

    public Schematic {
        symbols = List.copyOf(symbols);
        wires = List.copyOf(wires);
        junctions = List.copyOf(junctions);
        words = List.copyOf(words);
    }

    /**
     * A symbol at its place.
     *
     * @param parts names of the parts it stands for; none for ground, rail and open ends
     */
    record Symbol(Glyph glyph, List<String> parts, int x, int y, Turn turn, List<Pin> pins, List<Place> dots) {
        Box body() {
            return turn.box(glyph.body()).shifted(x, y);
        }
    }

    /** A pin of a symbol, the net it belongs to, and where its wire begins. */
    record Pin(String name, String net, int x, int y) {}

    record Place(int x, int y) {}

    /** A straight wire from its left or upper end. */
    record Wire(String net, int x1, int y1, int x2, int y2) {
        boolean isLevel() {
            return y1 == y2;
        }
    }

    record Junction(String net, int x, int y) {}

    /** What a word is. */
    enum Kind {
        TITLE,
        NAME,
        VALUE,
        NET,
        NOTE
    }

    record Word(String text, Kind kind, int x, int y, Anchor anchor) {
        int size() {
            return switch (kind) {
                case TITLE -> 16;
                case NAME -> Lettering.NAME_SIZE;
                case VALUE -> Lettering.VALUE_SIZE;
                case NET, NOTE -> 10;
            };
        }

        Box box() {
            return Lettering.box(text, size(), x, y, anchor);
        }
    }

    /** Draws a build. The same build gives the same drawing. */
    public static Schematic of(Build build) {
        return of(build, Care.PUBLISHED, () -> false);
    }

    /**
     * Draws a build unless it is told to stop.
     *
     * @param stop asked every few milliseconds, from several threads
     * @throws java.util.concurrent.CancellationException when it says so
     */
    public static Schematic of(Build build, BooleanSupplier stop) {
        return of(build, Care.PUBLISHED, stop);
    }

    static Schematic of(Build build, Care care, BooleanSupplier stop) {
        Netlist netlist = Netlist.of(build);
        Schematic drawn = of(netlist, build.name(), care, SEED, stop);
        for (int round = 1; round < ROUNDS && !Readability.of(drawn).faults().isEmpty(); round++)
            drawn = of(netlist, build.name(), care.twice(round), SEED + round * care.starts(), stop);
        return drawn;
    }

    private static Schematic of(Netlist netlist, String title, Care care, long seed, BooleanSupplier stop) {
        List<Board> settled = IntStream.range(0, care.starts())
                .parallel()
                .mapToObj(start -> Annealing.search(netlist, care.severity(), seed + start, care.effort(), stop))
                .sorted(Comparator.comparingDouble(Board::total))
                .limit(care.kept())
                .toList();
        Board best = settled.stream()
                .parallel()
                .map(board -> Annealing.improve(board, seed, 2 * care.effort(), stop))
                .min(Comparator.comparingDouble(Board::total))
                .orElseThrow();
        return new Inking(best, title, remarks(netlist)).ink();
    }

    /**
     * How much a drawing is worth. Searches from several starts settle; the best few are gone over once more, and the best of
     * those wins.
     *
     * @param effort tries per symbol and net
     * @param severity how much worse than usual a fault is
     */
    record Care(int starts, int kept, int effort, double severity) {
        static final Care PUBLISHED = new Care(8, 3, 4000, 1);

        /** With the same promise, but less tidy. */
        static final Care HASTE = new Care(2, 1, 500, 1);

        Care twice(int times) {
            return new Care(starts, kept, effort << times, 1 + times);
        }
    }

    private static List<String> remarks(Netlist netlist) {
        return netlist.loose().stream().map(Schematic::remark).toList();
    }

    private static String remark(Coupled coupled) {
        return coupled.first() + " and " + coupled.second() + " couple a little: k = "
                + coupled.k().text();
    }
}
