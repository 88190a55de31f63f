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
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Which words stand where, for the index. */
final class PageWords {
    /** Letters and figures, joined by hyphens. */
    private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}_][\\p{L}\\p{N}_-]*");

    private static final Pattern LETTERED = Pattern.compile("<text[^>]*>([^<]*)</text>");

    private PageWords() {}

    /** Every word that stands in a section, drawings included. */
    static Set<String> of(Section section) {
        Set<String> words = new HashSet<>();
        for (Block block : section.blocks()) {
            Matcher found = WORD.matcher(text(block));
            while (found.find()) words.add(found.group());
        }
        return words;
    }

    /** What a drawing says in words. */
    private static String words(String svg) {
        StringBuilder all = new StringBuilder();
        Matcher text = LETTERED.matcher(svg);
        while (text.find()) all.append(text.group(1)).append('\n');
        return all.toString();
    }

    private static String text(Block block) {
        if (block instanceof Paragraph p) return p.text();
        if (block instanceof Heading h) return h.text();
        if (block instanceof Caution c) return c.text();
        if (block instanceof Bullets b) return String.join("\n", b.items());
        if (block instanceof Steps s) return items(s.items());
        if (block instanceof Outline o) return items(o.items());
        if (block instanceof Drawing d) return d.caption() + "\n" + words(d.svg());
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
