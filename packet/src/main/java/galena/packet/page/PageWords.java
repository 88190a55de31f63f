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
import java.util.regex.Pattern;

/** Which words stand where, for the index. */
final class PageWords {
    private PageWords() {}

    /** Whether a section names a term as a word of its own, drawings included. */
    static boolean names(Section section, String term) {
        Pattern word = Pattern.compile("(?<![\\p{L}\\p{N}_-])" + Pattern.quote(term) + "(?![\\p{L}\\p{N}_])");
        return section.blocks().stream()
                .anyMatch(block -> word.matcher(text(block)).find());
    }

    private static String text(Block block) {
        if (block instanceof Paragraph p) return p.text();
        if (block instanceof Heading h) return h.text();
        if (block instanceof Caution c) return c.text();
        if (block instanceof Bullets b) return String.join("\n", b.items());
        if (block instanceof Steps s) return items(s.items());
        if (block instanceof Outline o) return items(o.items());
        if (block instanceof Drawing d) return d.caption() + "\n" + d.svg().replaceAll("(?s)<style>.*?</style>", "");
        StringBuilder cells = new StringBuilder();
        for (List<String> row : ((Grid) block).rows())
            cells.append(String.join("\n", row)).append('\n');
        return cells.toString();
    }

    private static String items(List<Item> items) {
        StringBuilder all = new StringBuilder();
        for (Item item : items) all.append(item.text()).append('\n').append(items(item.below()));
        return all.toString();
    }
}
