package galena.packet.schematic;

import galena.packet.schematic.Schematic.Junction;
import galena.packet.schematic.Schematic.Kind;
import galena.packet.schematic.Schematic.Place;
import galena.packet.schematic.Schematic.Symbol;
import galena.packet.schematic.Schematic.Wire;
import galena.packet.schematic.Schematic.Word;
import java.util.Locale;

/** Writes a schematic as SVG 1.1 text that stands alone: no script, no font, no other file. Ink on paper, light or dark. */
public final class SchematicSvg {
    private static final String STYLE =
            """
            <style>
            .schematic{font-family:"DejaVu Sans","Segoe UI","Helvetica Neue",Arial,sans-serif;font-size:11px}
            .schematic .paper{fill:#fbfaf5}
            .schematic path{fill:none;stroke:#2b2b28;stroke-width:1.3;stroke-linecap:round;stroke-linejoin:round}
            .schematic .solid{fill:#2b2b28;stroke-width:.6}
            .schematic circle{fill:#2b2b28}
            .schematic text{fill:#2b2b28}
            .schematic .name{font-size:12px}
            .schematic .net,.schematic .note{font-size:10px;font-style:italic;fill:#55534c}
            .schematic .title{font-family:"DejaVu Serif",Georgia,"Times New Roman",serif;font-size:16px}
            .schematic .rule{stroke:#c9584a;stroke-width:.8}
            @media screen and (prefers-color-scheme:dark){
            .schematic .paper{fill:#1f2124}
            .schematic path{stroke:#e6e3d8}
            .schematic .solid,.schematic circle,.schematic text{fill:#e6e3d8}
            .schematic .net,.schematic .note{fill:#b5b1a4}
            .schematic .rule{stroke:#c9584a}
            }
            @media print{.schematic .paper{fill:#fff}}
            </style>
            """;

    private final Schematic drawing;
    private final StringBuilder out = new StringBuilder();

    private SchematicSvg(Schematic drawing) {
        this.drawing = drawing;
    }

    /** The whole document. */
    public static String draw(Schematic drawing) {
        SchematicSvg svg = new SchematicSvg(drawing);
        svg.open();
        drawing.wires().forEach(svg::wire);
        drawing.junctions().forEach(svg::junction);
        drawing.symbols().forEach(svg::symbol);
        drawing.words().forEach(svg::word);
        svg.out.append("</svg>\n");
        return svg.out.toString();
    }

    private void open() {
        add(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" role=\"img\" class=\"schematic\">",
                drawing.width(), drawing.height());
        add("<title>%s</title>", escaped("Schematic of " + drawing.title()));
        out.append(STYLE);
        add("<rect class=\"paper\" width=\"%d\" height=\"%d\"/>", drawing.width(), drawing.height());
        add("<path class=\"rule\" d=\"M30 38.5H%d\"/>", drawing.width() - 30);
    }

    private void wire(Wire w) {
        add("<path d=\"M%d %dL%d %d\"/>", w.x1(), w.y1(), w.x2(), w.y2());
    }

    private void junction(Junction j) {
        add("<circle cx=\"%d\" cy=\"%d\" r=\"2.6\"/>", j.x(), j.y());
    }

    private void symbol(Symbol s) {
        Turn t = s.turn();
        add("<g transform=\"matrix(%d %d %d %d %d %d)\">", t.a(), t.b(), t.c(), t.d(), s.x(), s.y());
        if (!s.parts().isEmpty()) add("<title>%s</title>", escaped(String.join(" and ", s.parts())));
        add("<path d=\"%s\"/>", s.glyph().lines());
        if (!s.glyph().solids().isEmpty())
            add("<path class=\"solid\" d=\"%s\"/>", s.glyph().solids());
        add("</g>");
        for (Place dot : s.dots()) add("<circle cx=\"%d\" cy=\"%d\" r=\"1.8\"/>", dot.x(), dot.y());
    }

    private void word(Word w) {
        String anchor = w.anchor().name().toLowerCase(Locale.ROOT);
        String kind = w.kind() == Kind.VALUE ? "value" : w.kind().name().toLowerCase(Locale.ROOT);
        add(
                "<text class=\"%s\" x=\"%d\" y=\"%d\" text-anchor=\"%s\">%s</text>",
                kind, w.x(), w.y(), anchor, escaped(w.text()));
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }

    private void add(String format, Object... values) {
        out.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
