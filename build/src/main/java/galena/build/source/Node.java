package galena.build.source;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One value in a file, with its place and the keys that lead to it. */
public sealed interface Node {
    Span span();

    /** {@code parts.Ct.trimmer}, {@code strays[2].from}: lists count from 1. Empty for the whole file. */
    String path();

    /** What it is, with its article: for sentences. */
    String kind();

    default Place place() {
        return span().place();
    }

    /** How a scalar is written. */
    enum Style {
        PLAIN,
        SINGLE_QUOTED,
        DOUBLE_QUOTED,
        /** Text over several lines behind {@code |} or {@code >}. */
        BLOCK
    }

    /** A single value, as text. */
    record Scalar(Span span, String path, String text, Style style) implements Node {
        /** Nothing is written: {@code name:} and no more. */
        public boolean isEmpty() {
            return text.isEmpty() && style == Style.PLAIN;
        }

        @Override
        public String kind() {
            return "a value";
        }
    }

    /**
     * Values in a row.
     *
     * @param brackets true if written {@code […]}, false if one item stands on each line
     */
    record Listing(Span span, String path, List<Node> items, boolean brackets) implements Node {
        public Listing {
            items = List.copyOf(items);
        }

        @Override
        public String kind() {
            return "a list";
        }
    }

    /** A key and what stands behind it. */
    record Entry(Scalar key, Node value) {}

    /**
     * Keys with values, in the order of the file, without duplicates.
     *
     * @param braces true if written {@code {…}}, false if one entry stands on each line
     */
    record Mapping(Span span, String path, List<Entry> entries, boolean braces) implements Node {
        public Mapping {
            entries = List.copyOf(entries);
        }

        public Optional<Entry> entry(String key) {
            return entries.stream().filter(e -> e.key().text().equals(key)).findFirst();
        }

        public Optional<Node> value(String key) {
            return entry(key).map(Entry::value);
        }

        @Override
        public String kind() {
            return "a group of keys";
        }
    }

    /** Index in the text (code points) behind the last character of this value; comments and line ends don't count. */
    default int end() {
        if (this instanceof Mapping mapping
                && !mapping.braces()
                && !mapping.entries().isEmpty())
            return mapping.entries().get(mapping.entries().size() - 1).value().end();
        if (this instanceof Listing list && !list.brackets() && !list.items().isEmpty())
            return list.items().get(list.items().size() - 1).end();
        return span().end();
    }

    /** The node at a path, searched from this one down. */
    default Optional<Node> find(String wanted) {
        return Optional.ofNullable(all().get(wanted));
    }

    /** This node and all below it by path. */
    default Map<String, Node> all() {
        Map<String, Node> found = new LinkedHashMap<>();
        collect(this, found);
        return found;
    }

    private static void collect(Node node, Map<String, Node> found) {
        found.put(node.path(), node);
        if (node instanceof Listing list) list.items().forEach(item -> collect(item, found));
        if (node instanceof Mapping mapping) mapping.entries().forEach(entry -> collect(entry.value(), found));
    }
}
