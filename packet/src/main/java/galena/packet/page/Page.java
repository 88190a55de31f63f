package galena.packet.page;

import java.util.List;

/**
 * Everything on a page, in order.
 *
 * @param title of the whole
 * @param subtitle one line below it
 * @param trace what a printed copy is traced by; stands at the foot of every printed page
 * @param sections in order
 */
public record Page(String title, String subtitle, String trace, List<Section> sections) {
    public Page {
        sections = List.copyOf(sections);
    }

    /**
     * @param id for links, in letters and hyphens
     * @param heading in words
     */
    public record Section(String id, String heading, List<Block> blocks) {
        public Section {
            blocks = List.copyOf(blocks);
        }
    }

    /** A piece of a section. */
    public sealed interface Block {}

    public record Paragraph(String text) implements Block {}

    /** Words that must not be overlooked. */
    public record Caution(String text) implements Block {}

    public record Bullets(List<String> items) implements Block {
        public Bullets {
            items = List.copyOf(items);
        }
    }

    /** Things to do, one after the other. */
    public record Steps(List<String> items) implements Block {
        public Steps {
            items = List.copyOf(items);
        }
    }

    /**
     * A table.
     *
     * @param caption what it shows
     * @param head names of the columns
     * @param rows as many cells each as the head has
     */
    public record Grid(String caption, List<String> head, List<List<String>> rows) implements Block {
        public Grid {
            head = List.copyOf(head);
            rows = rows.stream().map(List::copyOf).toList();
            for (List<String> row : rows)
                if (row.size() != head.size())
                    throw new IllegalArgumentException(caption + ": " + row + " does not fit " + head);
        }
    }

    /**
     * A drawing.
     *
     * @param name of its file, without ending
     * @param caption what it shows
     * @param svg the whole document
     */
    public record Drawing(String name, String caption, String svg) implements Block {}
}
