package galena.packet.schematic;

import galena.packet.schematic.Schematic.Junction;
import galena.packet.schematic.Schematic.Kind;
import galena.packet.schematic.Schematic.Place;
import galena.packet.schematic.Schematic.Symbol;
import galena.packet.schematic.Schematic.Wire;
import galena.packet.schematic.Schematic.Word;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * A schematic as SVG to be written on: every part is a group {@code <g class="part" data-part="Ct">} with its symbol, its words and a
 * rectangle that takes a touch, so that a page may let one be picked and its value be changed. It bears no style, no script and no
 * title; the page has its own. For a drawing that stands alone: {@link SchematicSvg}.
 */
public final class AnnotatedSvg {
    private static final int TOUCH = 4;

    private final Schematic drawing;
    private final StringBuilder out = new StringBuilder();
    private final Map<String, List<Word>> words = new LinkedHashMap<>();
    private final Set<Word> taken = new HashSet<>();

    private AnnotatedSvg(Schematic drawing) {
        this.drawing = drawing;
    }

    /** The {@code <svg>} element. */
    public static String draw(Schematic drawing) {
        AnnotatedSvg svg = new AnnotatedSvg(drawing);
        svg.sort();
        svg.open();
        drawing.wires().forEach(svg::wire);
        drawing.junctions().forEach(svg::junction);
        drawing.symbols().forEach(svg::symbol);
        drawing.words().stream()
                .filter(w -> w.kind() != Kind.TITLE && !svg.taken.contains(w))
                .forEach(svg::word);
        svg.out.append("</svg>\n");
        return svg.out.toString();
    }

    /** A part's value stands behind its name. */
    private void sort() {
        Set<String> parts = new HashSet<>();
        drawing.symbols().forEach(s -> parts.addAll(s.parts()));
        String part = "";
        for (Word word : drawing.words()) {
            if (word.kind() == Kind.NAME) part = parts.contains(word.text()) ? word.text() : "";
            else if (word.kind() != Kind.VALUE) part = "";
            if (part.isEmpty()) continue;
            words.computeIfAbsent(part, p -> new ArrayList<>()).add(word);
            taken.add(word);
        }
    }

    private void open() {
        int top = drawing.words().stream()
                .filter(w -> w.kind() != Kind.TITLE)
                .mapToInt(w -> w.box().top())
                .min()
                .orElse(0);
        for (Symbol s : drawing.symbols()) top = Math.min(top, s.body().top());
        int from = Math.max(0, top - 2 * TOUCH);
        add(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 %d %d %d\" class=\"schematic\">",
                from, drawing.width(), drawing.height() - from);
    }

    private void wire(Wire w) {
        add("<path class=\"wire\" d=\"M%d %dL%d %d\"/>", w.x1(), w.y1(), w.x2(), w.y2());
    }

    private void junction(Junction j) {
        add("<circle cx=\"%d\" cy=\"%d\" r=\"2.6\"/>", j.x(), j.y());
    }

    private void symbol(Symbol s) {
        for (String part : s.parts()) {
            add("<g class=\"part\" data-part=\"%s\">", escaped(part));
            touch(s, part);
            if (part.equals(s.parts().get(0))) ink(s);
            words.getOrDefault(part, List.of()).forEach(this::word);
            add("</g>");
        }
        if (s.parts().isEmpty()) ink(s);
    }

    /** Around symbol and words; of two windings drawn as one, the second is touched at its words. */
    private void touch(Symbol s, String part) {
        List<Box> boxes = new ArrayList<>();
        if (part.equals(s.parts().get(0))) boxes.add(s.body());
        words.getOrDefault(part, List.of()).forEach(w -> boxes.add(w.box()));
        boxes.stream()
                .reduce(Box::with)
                .map(b -> b.grown(TOUCH))
                .ifPresent(b -> add(
                        "<rect class=\"touch\" x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" rx=\"4\"/>",
                        b.left(), b.top(), b.right() - b.left(), b.bottom() - b.top()));
    }

    private void ink(Symbol s) {
        Turn t = s.turn();
        add("<g transform=\"matrix(%d %d %d %d %d %d)\">", t.a(), t.b(), t.c(), t.d(), s.x(), s.y());
        add("<path d=\"%s\"/>", s.glyph().lines());
        if (!s.glyph().solids().isEmpty())
            add("<path class=\"solid\" d=\"%s\"/>", s.glyph().solids());
        add("</g>");
        for (Place dot : s.dots()) add("<circle cx=\"%d\" cy=\"%d\" r=\"1.8\"/>", dot.x(), dot.y());
    }

    private void word(Word w) {
        add(
                "<text class=\"%s\" x=\"%d\" y=\"%d\" text-anchor=\"%s\">%s</text>",
                w.kind().name().toLowerCase(Locale.ROOT),
                w.x(),
                w.y(),
                w.anchor().name().toLowerCase(Locale.ROOT),
                escaped(w.text()));
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    private void add(String format, Object... values) {
        out.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
