package galena.build.source;

import galena.build.source.Node.Entry;
import galena.build.source.Node.Listing;
import galena.build.source.Node.Mapping;
import galena.build.source.Node.Scalar;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.MappingStartEvent;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.events.SequenceStartEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/** Reads YAML into {@link Node}s that know their places. */
public final class YamlReader {
    /** Deeper than any file here goes; nesting beyond it would exhaust the stack. */
    private static final int DEEPEST = 40;

    private final SourceFile file;
    private final Problems problems;
    private final Iterator<Event> events;

    private YamlReader(SourceFile file, Problems problems) {
        this.file = file;
        this.problems = problems;
        LoadSettings settings = LoadSettings.builder()
                .setLabel(file.name())
                .setUseMarks(true)
                .setCodePointLimit(Integer.MAX_VALUE)
                .build();
        this.events = new Parse(settings).parseString(file.text()).iterator();
    }

    /**
     * The keys and values of a file.
     *
     * @param problems is added to: duplicate keys, aliases, tags, further documents
     * @throws BadInputException if the text is no YAML, or its top is not a group of keys: nothing can be read then
     */
    public static Mapping read(SourceFile file, Problems problems) throws BadInputException {
        YamlReader reader = new YamlReader(file, problems);
        try {
            return reader.document();
        } catch (YamlEngineException e) {
            problems.add(YamlTrouble.problem(file, e));
            throw new BadInputException(problems.sorted());
        }
    }

    private Mapping document() throws BadInputException {
        Optional<Node> top = Optional.empty();
        while (events.hasNext()) {
            Event event = events.next();
            if (event instanceof DocumentStartEvent && top.isPresent()) {
                problems.add(new Problem(
                        place(event),
                        "",
                        "a second document starts here",
                        "A file holds one document.",
                        "Delete the ---."));
                break;
            }
            if (event instanceof NodeEvent node) top = Optional.of(node(node, "", 0));
        }
        if (top.isPresent() && top.get() instanceof Mapping mapping) return mapping;
        String found = top.isEmpty() || (top.get() instanceof Scalar s && s.isEmpty())
                ? "is empty"
                : "starts with " + top.get().kind();
        problems.add(new Problem(
                top.map(Node::place).orElse(new Place(file.name(), 1, 1)),
                "",
                found,
                "The file holds keys with values, the first of them its version.",
                "First line: galena: 1"));
        throw new BadInputException(problems.sorted());
    }

    private Node node(NodeEvent event, String path, int depth) throws BadInputException {
        refuseAnchorsAndTags(event, path);
        if (depth > DEEPEST) {
            problems.add(new Problem(place(event), path, "is nested too deep", "Nothing here is nested that deep."));
            throw new BadInputException(problems.sorted());
        }
        if (event instanceof ScalarEvent scalar)
            return new Scalar(span(event, event), path, scalar.getValue(), style(scalar));
        if (event instanceof SequenceStartEvent list) return listing(list, path, depth);
        if (event instanceof MappingStartEvent mapping) return mapping(mapping, path, depth);
        return new Scalar(span(event, event), path, "", Node.Style.PLAIN); // an alias, refused above
    }

    private Listing listing(SequenceStartEvent start, String path, int depth) throws BadInputException {
        List<Node> items = new ArrayList<>();
        Event event = events.next();
        while (event instanceof NodeEvent item) {
            items.add(node(item, path + "[" + (items.size() + 1) + "]", depth + 1));
            event = events.next();
        }
        return new Listing(span(start, event), path, items, start.getFlowStyle() == FlowStyle.FLOW);
    }

    private Mapping mapping(MappingStartEvent start, String path, int depth) throws BadInputException {
        Map<String, Entry> entries = new LinkedHashMap<>();
        Event event = events.next();
        while (event instanceof NodeEvent keyEvent) {
            Node key = node(keyEvent, path, depth + 1);
            String name = key instanceof Scalar scalar ? scalar.text() : "?";
            String below = path.isEmpty() ? name : path + "." + name;
            Node value = node((NodeEvent) events.next(), below, depth + 1);
            if (key instanceof Scalar scalar) keep(new Entry(scalar, value), below, entries);
            else problems.add(new Problem(key.place(), path, "a key is " + key.kind(), "A key is a single word."));
            event = events.next();
        }
        boolean braces = start.getFlowStyle() == FlowStyle.FLOW;
        return new Mapping(span(start, event), path, List.copyOf(entries.values()), braces);
    }

    private void keep(Entry entry, String path, Map<String, Entry> entries) {
        Entry first = entries.putIfAbsent(entry.key().text(), entry);
        if (first == null) return;
        problems.add(new Problem(
                entry.key().place(),
                path,
                "is written a second time",
                "A name stands once; the first is in line "
                        + first.key().place().line() + ".",
                "Rename or delete one of the two."));
    }

    private void refuseAnchorsAndTags(NodeEvent event, String path) {
        if (event instanceof AliasEvent)
            refuse(event, path, "an alias (*) stands here", "Write the value out where it is needed.");
        else if (event.getAnchor().isPresent())
            refuse(event, path, "an anchor (&) stands here", "Write the value out where it is needed.");
        boolean tagged = (event instanceof ScalarEvent scalar && scalar.getTag().isPresent())
                || (event instanceof CollectionStartEvent start
                        && start.getTag().isPresent());
        if (tagged) refuse(event, path, "a tag (!) stands here", "Put a text that starts with ! in quotes.");
    }

    private void refuse(Event event, String path, String found, String remedy) {
        problems.add(new Problem(
                place(event), path, found, "Each value stands on its own, so that one can be changed alone.", remedy));
    }

    private static Node.Style style(ScalarEvent scalar) {
        return switch (scalar.getScalarStyle()) {
            case PLAIN -> Node.Style.PLAIN;
            case SINGLE_QUOTED -> Node.Style.SINGLE_QUOTED;
            case DOUBLE_QUOTED, JSON_SCALAR_STYLE -> Node.Style.DOUBLE_QUOTED;
            case LITERAL, FOLDED -> Node.Style.BLOCK;
        };
    }

    private Span span(Event from, Event to) {
        int start = mark(from.getStartMark()).getIndex();
        return new Span(
                place(from), start, Math.max(start, mark(to.getEndMark()).getIndex()));
    }

    private Place place(Event event) {
        Mark mark = mark(event.getStartMark());
        return new Place(file.name(), mark.getLine() + 1, mark.getColumn() + 1);
    }

    private static Mark mark(Optional<Mark> mark) {
        return mark.orElseThrow(() -> new IllegalStateException("the YAML parser was asked to keep marks"));
    }
}
