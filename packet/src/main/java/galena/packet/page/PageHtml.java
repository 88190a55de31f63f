package galena.packet.page;

import galena.packet.page.Page.Block;
import galena.packet.page.Page.Bullets;
import galena.packet.page.Page.Caution;
import galena.packet.page.Page.Drawing;
import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Heading;
import galena.packet.page.Page.Item;
import galena.packet.page.Page.Outline;
import galena.packet.page.Page.Paragraph;
import galena.packet.page.Page.Section;
import galena.packet.page.Page.Steps;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Writes a page as one HTML document that needs nothing else: no network, no script, no font. The text is XML as well, so that
 * any XML reader takes it.
 */
public final class PageHtml {
    /** A table of so few rows is not torn between two sheets of paper. */
    private static final int BRIEF = 16;

    /** So many letters stay on one line of a table. */
    private static final int SHORT = 16;

    private final Page page;
    private final boolean print;
    private final StringBuilder out = new StringBuilder();
    private int tables;
    private int figures;

    private PageHtml(Page page, boolean print) {
        this.page = page;
        this.print = print;
    }

    /** For screens, light or dark, large or small; prints well too. */
    public static String of(Page page) {
        return new PageHtml(page, false).write();
    }

    /** For paper alone. */
    static String forPaper(Page page) {
        return new PageHtml(page, true).write();
    }

    private String write() {
        out.append("<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\">\n<head>\n");
        if (print)
            out.append("<meta name=\"subject\" content=\"")
                    .append(escaped(page.subtitle()))
                    .append("\"/>\n");
        else out.append("<meta charset=\"utf-8\"/>\n");
        out.append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n");
        out.append("<meta name=\"description\" content=\"")
                .append(escaped(page.subtitle()))
                .append("\"/>\n");
        tag("title", "", page.title());
        out.append("<style>\n")
                .append(print ? PageStyle.paper(page.trace()) : PageStyle.SCREEN)
                .append("</style>\n");
        out.append("</head>\n<body>\n<header>\n");
        tag("h1", "", page.title());
        tag("p", "subtitle", page.subtitle());
        out.append("</header>\n");
        index();
        out.append("<main>\n");
        page.sections().forEach(this::section);
        terms();
        out.append("</main>\n");
        if (!print) { // on paper it stands at the foot of every page
            out.append("<footer>\n");
            tag("p", "trace", page.trace());
            out.append("</footer>\n");
        }
        out.append("</body>\n</html>\n");
        return out.toString();
    }

    private void index() {
        out.append("<nav aria-label=\"Contents\">\n<ol>\n");
        for (Section s : page.sections())
            out.append("<li><a href=\"#")
                    .append(s.id())
                    .append("\" title=\"Go to this section\">")
                    .append(escaped(s.heading()))
                    .append("</a></li>\n");
        out.append("</ol>\n</nav>\n");
    }

    private void section(Section section) {
        out.append("<section>\n<h2 id=\"").append(section.id()).append("\">");
        out.append(number(section))
                .append(' ')
                .append(escaped(section.heading()))
                .append("</h2>\n");
        section.blocks().forEach(this::block);
        out.append("</section>\n");
    }

    private void block(Block block) {
        if (block instanceof Paragraph p) tag("p", "", p.text());
        else if (block instanceof Heading h) tag("h3", "", h.text());
        else if (block instanceof Outline o) outline(o.items());
        else if (block instanceof Caution c) tag("p", "caution", c.text());
        else if (block instanceof Bullets b) list("ul", b.items());
        else if (block instanceof Steps s) steps(s.items());
        else if (block instanceof Grid g) grid(g);
        else if (block instanceof Drawing d) drawing(d);
    }

    private void list(String tag, List<String> items) {
        out.append('<').append(tag).append(">\n");
        for (String item : items) tag("li", "", item);
        out.append("</").append(tag).append(">\n");
    }

    private void grid(Grid grid) {
        tables++;
        boolean brief = grid.rows().size() <= BRIEF;
        out.append("<div class=\"wide\">\n").append(brief ? "<table class=\"brief\">\n" : "<table>\n");
        tag("caption", "", "Table " + tables + ". " + grid.caption());
        out.append("<thead>\n<tr>");
        for (String cell : grid.head())
            out.append("<th scope=\"col\">").append(escaped(cell)).append("</th>");
        out.append("</tr>\n</thead>\n<tbody>\n");
        for (List<String> row : grid.rows()) {
            out.append("<tr><th scope=\"row\">").append(escaped(row.get(0))).append("</th>");
            for (int k = 1; k < row.size(); k++) cell(grid.head().get(k), row.get(k));
            out.append("</tr>\n");
        }
        out.append("</tbody>\n</table>\n</div>\n");
    }

    /** On a narrow screen a row becomes a card, whose cells bear the names of their columns. */
    private void cell(String column, String text) {
        out.append("<td");
        if (text.length() <= SHORT) out.append(" class=\"short\"");
        if (!print && !column.isEmpty())
            out.append(" data-label=\"").append(escaped(column)).append('"');
        out.append('>').append(escaped(text)).append("</td>");
    }

    private void steps(List<Item> items) {
        out.append("<ol>\n");
        for (Item item : items) {
            out.append("<li>").append(escaped(item.text()));
            if (!item.below().isEmpty())
                list("ul", item.below().stream().map(Item::text).toList());
            out.append("</li>\n");
        }
        out.append("</ol>\n");
    }

    private void outline(List<Item> items) {
        out.append("<ul class=\"tree\">\n");
        for (Item item : items) {
            out.append("<li>").append(escaped(item.text()));
            if (!item.below().isEmpty()) outline(item.below());
            out.append("</li>\n");
        }
        out.append("</ul>\n");
    }

    private void drawing(Drawing drawing) {
        figures++;
        if (print) {
            PaperDrawing onPaper = PaperDrawing.of(drawing.svg(), drawing.caption());
            out.append(onPaper.wide() ? "<figure>\n" : "<figure class=\"pair\">\n")
                    .append(onPaper.html());
        } else {
            out.append("<figure>\n<div class=\"wide\">\n").append(drawing.svg()).append("</div>\n");
        }
        tag("figcaption", "", "Figure " + figures + ". " + drawing.caption());
        out.append("</figure>\n");
    }

    /** Place in the contents, from 1. */
    private int number(Section section) {
        return page.sections().indexOf(section) + 1;
    }

    /** The index: each term with the sections that name it. */
    private void terms() {
        if (page.terms().isEmpty()) return;
        out.append(
                "<section>\n<h2 id=\"index\">Index</h2>\n<p>Numbers are those of the contents.</p>\n<ul class=\"index\">\n");
        List<Set<String>> words = page.sections().stream().map(PageWords::of).toList();
        for (String term : page.terms()) {
            List<Section> where = page.sections().stream()
                    .filter(s -> words.get(number(s) - 1).contains(term))
                    .toList();
            if (where.isEmpty()) continue;
            out.append("<li><strong>").append(escaped(term)).append("</strong> ");
            out.append(where.stream().map(this::reference).collect(Collectors.joining(", ")));
            out.append("</li>\n");
        }
        out.append("</ul>\n</section>\n");
    }

    private String reference(Section section) {
        return "<a href=\"#" + section.id() + "\" title=\"" + escaped(section.heading()) + "\">" + number(section)
                + "</a>";
    }

    private void tag(String tag, String kind, String text) {
        out.append('<').append(tag);
        if (!kind.isEmpty()) out.append(" class=\"").append(kind).append('"');
        out.append('>').append(escaped(text)).append("</").append(tag).append(">\n");
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
