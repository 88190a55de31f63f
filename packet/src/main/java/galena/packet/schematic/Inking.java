package galena.packet.schematic;

import galena.packet.schematic.Glyph.Side;
import galena.packet.schematic.Lettering.Anchor;
import galena.packet.schematic.Schematic.Junction;
import galena.packet.schematic.Schematic.Kind;
import galena.packet.schematic.Schematic.Pin;
import galena.packet.schematic.Schematic.Place;
import galena.packet.schematic.Schematic.Symbol;
import galena.packet.schematic.Schematic.Wire;
import galena.packet.schematic.Schematic.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/** Turns a settled board into symbols, wires, junctions and words. */
final class Inking {
    private static final int MARGIN = 30;
    private static final int HEAD = 60;
    private static final int FOOT = 14;

    private final Board board;
    private final String title;
    private final List<String> remarks;
    private final List<Symbol> symbols = new ArrayList<>();
    private final List<Wire> wires = new ArrayList<>();
    private final List<Junction> junctions = new ArrayList<>();
    private final List<Word> words = new ArrayList<>();
    /** Places where a net's wires end on its line. */
    private final Map<Integer, TreeSet<Integer>> meets = new TreeMap<>();

    Inking(Board board, String title, List<String> remarks) {
        this.board = board;
        this.title = title;
        this.remarks = remarks;
    }

    Schematic ink() {
        for (int e = 0; e < board.elements; e++) element(e);
        meets.forEach(this::line);
        junctions();
        new NetNames(symbols, wires, words).place();
        return framed();
    }

    private String net(int net) {
        return board.netlist.nets().get(net);
    }

    private void element(int e) {
        Element element = board.element(e);
        Variant shown = board.shown(e);
        int x = board.x[e], y = board.y[e] * Board.HALF;
        List<Pin> pins = new ArrayList<>();
        for (int p = 0; p < element.nets().size(); p++) {
            Glyph.Pin pin = shown.pins().get(p);
            pins.add(new Pin(element.pinNames().get(p), net(element.nets().get(p)), x + pin.x(), y + pin.y()));
            wire(pin, element.nets().get(p), x + pin.x(), y + pin.y(), shown.railSymbol());
        }
        symbols.add(new Symbol(element.glyph(), element.parts(), x, y, shown.turn(), pins, dots(element, shown, x, y)));
        for (Variant.Word word : shown.words())
            if (!word.text().isEmpty())
                words.add(new Word(
                        word.text(),
                        word.isName() ? Kind.NAME : Kind.VALUE,
                        x + word.x(),
                        y + word.y(),
                        word.anchor()));
    }

    /** Dots beside the like ends of windings, on the outer side. */
    private static List<Place> dots(Element element, Variant shown, int x, int y) {
        return element.likeEnds().stream()
                .map(p -> shown.pins().get(p))
                .map(pin -> new Place(x + pin.x() + (pin.x() < 0 ? -5 : 5), y + (pin.y() < 0 ? -17 : 17)))
                .toList();
    }

    private void wire(Glyph.Pin pin, int net, int x, int y, boolean railSymbol) {
        boolean across = pin.side() == Side.W || pin.side() == Side.E;
        int turn = x - pin.x() + Board.jog(pin);
        int line = board.row[net] * Board.ROW;
        boolean wrongWay = pin.side() == Side.N ? line >= y : pin.side() == Side.S && line <= y;
        if (net == Netlist.GROUND || (net == Netlist.RAIL && (railSymbol || wrongWay))) {
            if (across) add(net, x, y, turn, y);
            flag(net, across ? turn : x, y);
        } else if (across && line != y) {
            add(net, x, y, turn, y);
            add(net, turn, y, turn, line);
            meet(net, turn);
        } else if (wrongWay) {
            detour(pin, net, x, y, line);
        } else {
            if (!across && line != y) add(net, x, y, x, line);
            meet(net, x);
        }
    }

    /** A net on the wrong side of its pin is reached around the symbol. */
    private void detour(Glyph.Pin pin, int net, int x, int y, int line) {
        int level = y + (pin.side() == Side.N ? -Board.JOG : Board.JOG), aside = x - 3 * Board.JOG;
        add(net, x, y, x, level);
        add(net, x, level, aside, level);
        add(net, aside, level, aside, line);
        meet(net, aside);
    }

    private void flag(int net, int x, int y) {
        Glyph glyph = net == Netlist.GROUND ? Glyph.GROUND : Glyph.RAIL;
        symbols.add(new Symbol(glyph, List.of(), x, y, Turn.UPRIGHT, List.of(new Pin("", net(net), x, y)), List.of()));
        if (net == Netlist.RAIL) words.add(new Word(net(net), Kind.NET, x, y - 9, Anchor.MIDDLE));
    }

    private void add(int net, int x1, int y1, int x2, int y2) {
        wires.add(new Wire(net(net), Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2)));
    }

    private void meet(int net, int x) {
        meets.computeIfAbsent(net, n -> new TreeSet<>()).add(x);
    }

    /** The line of a net from its first to its last wire. */
    private void line(int net, TreeSet<Integer> xs) {
        int y = board.row[net] * Board.ROW;
        if (xs.first() < xs.last()) add(net, xs.first(), y, xs.last(), y);
    }

    /** A dot wherever three or more ends or runs of one net come together. */
    private void junctions() {
        TreeSet<String> done = new TreeSet<>();
        for (Wire wire : List.copyOf(wires)) {
            for (Place end : List.of(new Place(wire.x1(), wire.y1()), new Place(wire.x2(), wire.y2()))) {
                if (branches(wire.net(), end) >= 3 && done.add(end.x() + " " + end.y()))
                    junctions.add(new Junction(wire.net(), end.x(), end.y()));
            }
        }
        for (Symbol symbol : symbols)
            for (Pin pin : symbol.pins())
                if (branches(pin.net(), new Place(pin.x(), pin.y())) >= 3 && done.add(pin.x() + " " + pin.y()))
                    junctions.add(new Junction(pin.net(), pin.x(), pin.y()));
    }

    /** Directions in which something of the net leaves a place, pins among them. */
    private int branches(String net, Place at) {
        boolean left = false, right = false, up = false, down = false;
        for (Wire w : wires) {
            if (!w.net().equals(net)) continue;
            if (w.isLevel() && w.y1() == at.y() && w.x1() <= at.x() && at.x() <= w.x2()) {
                left |= w.x1() < at.x();
                right |= w.x2() > at.x();
            }
            if (!w.isLevel() && w.x1() == at.x() && w.y1() <= at.y() && at.y() <= w.y2()) {
                up |= w.y1() < at.y();
                down |= w.y2() > at.y();
            }
        }
        int branches = (left ? 1 : 0) + (right ? 1 : 0) + (up ? 1 : 0) + (down ? 1 : 0);
        for (Symbol symbol : symbols)
            for (Pin pin : symbol.pins())
                if (pin.net().equals(net) && pin.x() == at.x() && pin.y() == at.y()) branches++;
        return branches;
    }

    /** Everything moved so that the sheet begins at (0, 0), with a title above and remarks below. */
    private Schematic framed() {
        Box all = new Box(0, 0, 10, 10);
        boolean first = true;
        for (Symbol s : symbols) {
            all = first ? s.body() : all.with(s.body());
            first = false;
        }
        for (Word w : words) all = all.with(w.box());
        for (Wire w : wires) all = all.with(new Box(w.x1(), w.y1(), w.x2(), w.y2()));
        int dx = MARGIN - all.left(), dy = HEAD - all.top();
        int width = Math.max(all.right() + dx + MARGIN, 2 * MARGIN + Lettering.width(title, 16));
        int y = all.bottom() + dy + MARGIN;
        List<Word> lettering = new ArrayList<>();
        lettering.add(new Word(title, Kind.TITLE, MARGIN, 28, Anchor.START));
        for (Word w : words) lettering.add(new Word(w.text(), w.kind(), w.x() + dx, w.y() + dy, w.anchor()));
        for (String remark : remarks) {
            lettering.add(new Word(remark, Kind.NOTE, MARGIN, y, Anchor.START));
            width = Math.max(width, 2 * MARGIN + Lettering.width(remark, 10));
            y += FOOT;
        }
        return new Schematic(
                title,
                width,
                y,
                symbols.stream().map(s -> shifted(s, dx, dy)).toList(),
                wires.stream()
                        .map(w -> new Wire(w.net(), w.x1() + dx, w.y1() + dy, w.x2() + dx, w.y2() + dy))
                        .toList(),
                junctions.stream()
                        .map(j -> new Junction(j.net(), j.x() + dx, j.y() + dy))
                        .toList(),
                lettering);
    }

    private static Symbol shifted(Symbol s, int dx, int dy) {
        return new Symbol(
                s.glyph(),
                s.parts(),
                s.x() + dx,
                s.y() + dy,
                s.turn(),
                s.pins().stream()
                        .map(p -> new Pin(p.name(), p.net(), p.x() + dx, p.y() + dy))
                        .toList(),
                s.dots().stream().map(d -> new Place(d.x() + dx, d.y() + dy)).toList());
    }
}
