package galena.packet.schematic;

import galena.packet.schematic.Lettering.Anchor;
import galena.packet.schematic.Schematic.Kind;
import galena.packet.schematic.Schematic.Symbol;
import galena.packet.schematic.Schematic.Wire;
import galena.packet.schematic.Schematic.Word;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Writes the names of nets beside their longest wires, where there is room; a name without room is left out. */
final class NetNames {
    private static final int STEP = 5;

    private final List<Symbol> symbols;
    private final List<Wire> wires;
    private final List<Word> words;

    NetNames(List<Symbol> symbols, List<Wire> wires, List<Word> words) {
        this.symbols = symbols;
        this.wires = wires;
        this.words = words;
    }

    void place() {
        Set<String> nets = new LinkedHashSet<>();
        for (Wire wire : wires) nets.add(wire.net());
        nets.remove("ground");
        for (String net : nets) name(net);
    }

    private void name(String net) {
        List<Wire> own =
                new ArrayList<>(wires.stream().filter(w -> w.net().equals(net)).toList());
        own.sort(Comparator.comparing((Wire w) -> !w.isLevel()).thenComparing(w -> w.x1() - w.x2() + w.y1() - w.y2()));
        for (Wire wire : own) {
            List<Word> places = wire.isLevel() ? along(net, wire) : beside(net, wire);
            for (Word word : places) {
                if (!isFree(word.box())) continue;
                words.add(word);
                return;
            }
        }
    }

    private static List<Word> along(String net, Wire wire) {
        List<Word> places = new ArrayList<>();
        int width = Lettering.width(net, 10);
        for (int x = wire.x1() + 4; x + width <= wire.x2() - 2; x += STEP) {
            places.add(new Word(net, Kind.NET, x, wire.y1() - 5, Anchor.START));
        }
        for (int x = wire.x1() + 4; x + width <= wire.x2() - 2; x += STEP)
            places.add(new Word(net, Kind.NET, x, wire.y1() + 12, Anchor.START));
        return places;
    }

    private static List<Word> beside(String net, Wire wire) {
        List<Word> places = new ArrayList<>();
        for (int y = wire.y1() + 12; y <= wire.y2() - 4; y += STEP) {
            places.add(new Word(net, Kind.NET, wire.x1() + 4, y, Anchor.START));
            places.add(new Word(net, Kind.NET, wire.x1() - 4, y, Anchor.END));
        }
        return places;
    }

    private boolean isFree(Box box) {
        for (Symbol symbol : symbols) if (symbol.body().grown(2).overlaps(box)) return false;
        for (Word word : words) if (word.box().grown(3).overlaps(box)) return false;
        for (Wire w : wires)
            if (new Box(w.x1(), w.y1(), w.x2(), w.y2()).grown(2).overlaps(box)) return false;
        return true;
    }
}
