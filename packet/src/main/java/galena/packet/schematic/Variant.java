package galena.packet.schematic;

import galena.packet.schematic.Glyph.Pin;
import galena.packet.schematic.Lettering.Anchor;
import java.util.ArrayList;
import java.util.List;

/**
 * One way of standing a symbol on the page, relative to its middle.
 *
 * @param turn of the symbol
 * @param pins in the order of the element's pins
 * @param body the symbol's box
 * @param words what is written beside it
 * @param labels the boxes of the words
 * @param railSymbol whether pins on the rail get a symbol of their own in place of a wire up to the rail
 * @param dislike cost of standing this way
 */
record Variant(
        Turn turn, List<Pin> pins, Box body, List<Word> words, List<Box> labels, boolean railSymbol, double dislike) {
    private static final int GAP = 5;
    private static final int LINE = 13;

    /** A line of text relative to the symbol's middle. */
    record Word(String text, boolean isName, int x, int y, Anchor anchor) {
        Box box() {
            return Lettering.box(text, isName ? Lettering.NAME_SIZE : Lettering.VALUE_SIZE, x, y, anchor);
        }
    }

    static List<Variant> of(Element element) {
        List<Variant> all = new ArrayList<>();
        for (Turn turn : turns(element.glyph()))
            for (List<Pin> pins : pins(element, turn)) {
                if (element.glyph() == Glyph.TEST_POINT) {
                    all.add(variant(element, turn, pins, false, false));
                    all.add(variant(element, turn, pins, true, false));
                    continue;
                }
                boolean sides = element.glyph().mayLie() && turn.a() != 0;
                boolean rail = element.nets().contains(Netlist.RAIL);
                for (int side = 0; side < (sides ? 2 : 1); side++)
                    for (int symbol = 0; symbol < (rail ? 2 : 1); symbol++)
                        all.add(variant(element, turn, pins, side == 1, symbol == 1));
            }
        return all;
    }

    private static List<Turn> turns(Glyph glyph) {
        if (glyph == Glyph.TEST_POINT) return List.of(Turn.UPRIGHT);
        boolean oneWayUp = glyph == Glyph.COUPLED || glyph == Glyph.COUPLED_ON_CORE || glyph == Glyph.AERIAL;
        if (oneWayUp) return List.of(Turn.UPRIGHT, Turn.MIRRORED);
        if (glyph.standsOnLine()) return List.of(Turn.UPRIGHT, Turn.MIRRORED, Turn.FLIPPED, Turn.BOTH);
        if (glyph.mayLie()) return List.of(Turn.UPRIGHT, Turn.FLIPPED, Turn.LYING, Turn.LYING_BACK);
        return List.of(Turn.UPRIGHT, Turn.FLIPPED);
    }

    /** Where the pins come to stand; either winding of two on one core may be turned over by itself. */
    private static List<List<Pin>> pins(Element element, Turn turn) {
        List<Pin> p = element.glyph().pins().stream()
                .map(pin -> new Pin(turn.side(pin.side()), turn.x(pin.x(), pin.y()), turn.y(pin.x(), pin.y())))
                .toList();
        if (!element.isWindings()) return List.of(p);
        return List.of(
                p,
                List.of(p.get(1), p.get(0), p.get(2), p.get(3)),
                List.of(p.get(0), p.get(1), p.get(3), p.get(2)),
                List.of(p.get(1), p.get(0), p.get(3), p.get(2)));
    }

    private static Variant variant(Element element, Turn turn, List<Pin> pins, boolean left, boolean railSymbol) {
        boolean lying = turn.a() == 0;
        Glyph glyph = element.glyph();
        boolean mirrored = turn.a() < 0;
        Turn shown = left && glyph != Glyph.TEST_POINT ? new Turn(-turn.a(), 0, 0, turn.d()) : turn;
        Box body = shown.box(glyph.body());
        double dislike = 0;
        if (left) dislike += 0.4;
        if (lying) dislike += 0.2;
        if (mirrored && glyph.isDevice()) dislike += 3;
        if (railSymbol) dislike += glyph == Glyph.BATTERY ? 20 : 8;
        List<Word> words = new ArrayList<>();
        if (element.isWindings()) {
            int first = mirrored ? 1 : 0;
            beside(words, element.parts().get(first), element.values().get(first), body.left() - GAP, 0, Anchor.END);
            beside(
                    words,
                    element.parts().get(1 - first),
                    element.values().get(1 - first),
                    body.right() + GAP,
                    0,
                    Anchor.START);
        } else if (glyph == Glyph.TEST_POINT) {
            words.add(new Word(element.parts().get(0), true, left ? -8 : 8, -11, left ? Anchor.END : Anchor.START));
        } else if (lying) {
            words.add(new Word(element.parts().get(0), true, 0, body.top() - GAP, Anchor.MIDDLE));
            words.add(new Word(element.values().get(0), false, 0, body.bottom() + GAP + 9, Anchor.MIDDLE));
        } else {
            boolean toLeft = glyph == Glyph.PRESET ? !mirrored : glyph.isDevice() ? mirrored : left;
            int x = toLeft ? body.left() - GAP : body.right() + GAP;
            int y = glyph == Glyph.DUAL_GATE_MOSFET ? turn.d() * -8 : glyph == Glyph.OPAMP ? ABOVE_OUTPUT : 0;
            beside(words, element.parts().get(0), element.values().get(0), x, y, toLeft ? Anchor.END : Anchor.START);
        }
        List<Box> labels =
                words.stream().filter(w -> !w.text().isEmpty()).map(Word::box).toList();
        return new Variant(shown, pins, body, words, labels, railSymbol, dislike);
    }

    /** An op-amp's output leaves where other devices have their words. */
    private static final int ABOVE_OUTPUT = -20;

    private static void beside(List<Word> words, String name, String value, int x, int y, Anchor anchor) {
        words.add(new Word(name, true, x, y - 2, anchor));
        words.add(new Word(value, false, x, y - 2 + LINE, anchor));
    }
}
