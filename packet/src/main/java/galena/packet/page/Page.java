package galena.packet.page;

import java.util.Arrays;
import java.util.List;

/**
 * Everything on a page, in order.
 *
 * @param title of the whole
 * @param subtitle one line below it
 * @param trace what a printed copy is traced by; stands at the foot of every printed page
 * @param sections in order
 * @param terms what the index lists: names that a reader looks up
 */
public record Page(String title, String subtitle, String trace, List<Section> sections, List<String> terms) {
    public Page {
        sections = List.copyOf(sections);
        terms = List.copyOf(terms);
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

    /** A heading within a section. */
    public record Heading(String text) implements Block {}

    /** Words that must not be overlooked. */
    public record Caution(String text) implements Block {}

    public record Bullets(List<String> items) implements Block {
        public Bullets {
            items = List.copyOf(items);
        }
    }

    /** Things to do, one after the other, each with what belongs to it. */
    public record Steps(List<Item> items) implements Block {
        public Steps {
            items = List.copyOf(items);
        }

        /** Without anything below them. */
        public static Steps of(List<String> steps) {
            return new Steps(
                    steps.stream().map(text -> new Item(text, List.of())).toList());
        }
    }

    /** What follows from what: items with items below them. */
    public record Outline(List<Item> items) implements Block {
        public Outline {
            items = List.copyOf(items);
        }
    }

    /**
     * @param text of the item
     * @param below what follows from it; may be empty
     */
    public record Item(String text, List<Item> below) {
        public Item {
            below = List.copyOf(below);
        }

        /** With plain items below it. */
        public static Item of(String text, String... below) {
            return new Item(
                    text,
                    Arrays.stream(below)
                            .map(words -> new Item(words, List.of()))
                            .toList());
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
