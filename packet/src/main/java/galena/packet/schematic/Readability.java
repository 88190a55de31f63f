package galena.packet.schematic;

import galena.packet.schematic.Schematic.Pin;
import galena.packet.schematic.Schematic.Symbol;
import galena.packet.schematic.Schematic.Wire;
import galena.packet.schematic.Schematic.Word;
import java.util.ArrayList;
import java.util.List;

/**
 * What a reader would trip over in a drawing, judged from the drawing alone, without knowing how it was made.
 *
 * @param faults words over words, symbols or wires; wires through symbols; pins without a wire; nets torn or joined
 * @param crossings places where wires of different nets cross
 */
public record Readability(List<String> faults, int crossings) {
    public Readability {
        faults = List.copyOf(faults);
    }

    public static Readability of(Schematic drawing) {
        List<String> faults = new ArrayList<>();
        words(drawing, faults);
        symbols(drawing, faults);
        wires(drawing, faults);
        faults.addAll(new Joints(drawing).faults());
        return new Readability(faults, crossings(drawing));
    }

    private static void words(Schematic drawing, List<String> faults) {
        List<Word> words = drawing.words();
        for (int i = 0; i < words.size(); i++) {
            Word word = words.get(i);
            for (Word other : words.subList(i + 1, words.size()))
                if (word.box().overlaps(other.box())) faults.add(word.text() + " lies over " + other.text());
            for (Symbol symbol : drawing.symbols())
                if (word.box().overlaps(symbol.body())) faults.add(word.text() + " lies over " + named(symbol));
            for (Wire wire : drawing.wires())
                if (word.box().overlaps(line(wire))) faults.add(word.text() + " lies over a wire of " + wire.net());
            Box box = word.box();
            if (box.left() < 0 || box.right() > drawing.width() || box.top() < 0 || box.bottom() > drawing.height())
                faults.add(word.text() + " leaves the sheet");
        }
    }

    private static void symbols(Schematic drawing, List<String> faults) {
        List<Symbol> symbols = drawing.symbols();
        for (int i = 0; i < symbols.size(); i++) {
            Symbol symbol = symbols.get(i);
            for (Symbol other : symbols.subList(i + 1, symbols.size()))
                if (symbol.body().overlaps(other.body())) faults.add(named(symbol) + " lies over " + named(other));
            for (Wire wire : drawing.wires())
                if (symbol.body().overlaps(line(wire)) && !hangsOn(symbol, wire))
                    faults.add("a wire of " + wire.net() + " runs through " + named(symbol));
        }
    }

    /** A symbol of ground or rail hangs on the wire that it ends. */
    private static boolean hangsOn(Symbol symbol, Wire wire) {
        return symbol.parts().isEmpty()
                && symbol.pins().stream()
                        .anyMatch(p -> line(wire).overlaps(new Box(p.x(), p.y(), p.x(), p.y()).grown(1)));
    }

    /** Wires of different nets side by side without a gap between them. */
    private static void wires(Schematic drawing, List<String> faults) {
        List<Wire> wires = drawing.wires();
        for (int i = 0; i < wires.size(); i++) {
            Wire wire = wires.get(i);
            for (Wire other : wires.subList(i + 1, wires.size()))
                if (!wire.net().equals(other.net())
                        && wire.isLevel() == other.isLevel()
                        && line(wire).grown(3).overlaps(line(other)))
                    faults.add("a wire of " + wire.net() + " runs along one of " + other.net());
        }
    }

    private static int crossings(Schematic drawing) {
        int crossings = 0;
        for (Wire level : drawing.wires())
            for (Wire upright : drawing.wires())
                if (level.isLevel()
                        && !upright.isLevel()
                        && !level.net().equals(upright.net())
                        && level.x1() < upright.x1()
                        && upright.x1() < level.x2()
                        && upright.y1() < level.y1()
                        && level.y1() < upright.y2()) crossings++;
        return crossings;
    }

    private static Box line(Wire wire) {
        return new Box(wire.x1(), wire.y1(), wire.x2(), wire.y2()).grown(1);
    }

    private static String named(Symbol symbol) {
        if (!symbol.parts().isEmpty()) return String.join(" and ", symbol.parts());
        List<Pin> pins = symbol.pins();
        return "the symbol of " + pins.get(0).net();
    }
}
