package galena.desk.page;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import galena.build.folder.Layout;
import galena.build.source.BadInputException;
import galena.desk.server.Answerer;
import galena.desk.server.Ask;
import galena.desk.server.Reply;
import galena.desk.server.TooLarge;
import galena.desk.writing.Json;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * The builds of one folder, and which of them the page shows: the folder's own, or one that lies in a folder of its own within it, as
 * proposals do. In a folder without a build the page offers to begin one. A notebook that was opened stays open with its work until
 * the end. For any number of threads.
 */
public final class Shelf implements Answerer, AutoCloseable {
    private static final long MOST_JSON = 64 * 1024;
    private static final int UNUSABLE = 422;
    private static final String OWN = "";
    private static final Reply NO_JSON = Reply.plain(415, "A JSON object is expected here.");
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private final Path folder;
    private final Clock clock;
    private final Consumer<Exception> faults;
    private final Map<String, Notebook> notebooks = new LinkedHashMap<>();
    private String shown = OWN;
    private Optional<PageAnswers> answers = Optional.empty();

    private Shelf(Path folder, Clock clock, Consumer<Exception> faults) {
        this.folder = folder;
        this.clock = clock;
        this.faults = faults;
    }

    /**
     * @param path a build's folder, its {@code build.yaml}, or a folder without a build
     * @param clock that dates edits and readings
     * @param faults hears what went wrong inside
     * @throws BadInputException with every problem in every file of the build
     */
    public static Shelf open(Path path, Clock clock, Consumer<Exception> faults) throws BadInputException, IOException {
        Path parent = path.toAbsolutePath().getParent();
        Path folder = Files.isRegularFile(path) && parent != null ? parent : path;
        Shelf shelf = new Shelf(folder, clock, faults);
        boolean empty = Files.isDirectory(folder) && !Files.exists(Layout.BUILD.in(folder));
        if (!empty) shelf.show(OWN);
        return shelf;
    }

    /** The one that is shown. */
    synchronized Notebook notebook() {
        Notebook notebook = notebooks.get(shown);
        if (notebook == null) throw new IllegalStateException("nothing is begun in " + folder);
        return notebook;
    }

    /** Whether there is a build to show. */
    public synchronized boolean hasBuild() {
        return answers.isPresent();
    }

    @Override
    public Reply answer(Ask ask) throws Exception {
        try {
            switch (ask.path()) {
                case "/api/shelf":
                    return Reply.json(told());
                case "/api/show":
                    return ask.method().equals("POST") ? shown(ask) : Reply.missing();
                default:
                    Optional<PageAnswers> now = now();
                    return now.isPresent() ? now.get().answer(ask) : unbegun(ask);
            }
        } catch (BadInputException bad) {
            return Reply.json(UNUSABLE, NotebookJson.refused(bad.problems()));
        } catch (JsonProcessingException broken) {
            return Reply.plain(400, "This is not JSON.");
        }
    }

    private synchronized Optional<PageAnswers> now() {
        return answers;
    }

    /** Of a folder in which nothing was begun. */
    private Reply unbegun(Ask ask) throws Exception {
        String path = ask.path();
        if (path.equals("/")) return Resources.of("start.html");
        if (path.startsWith("/page/")) return Resources.of(path.substring("/page/".length()));
        if (path.equals("/api/start")) return Reply.json(Begin.offered(folder));
        if (path.equals("/api/pattern"))
            return Begin.drawing(ask.parameter("of").orElse(""));
        if (path.equals("/api/begin") && ask.method().equals("POST")) return begun(ask);
        return Reply.missing();
    }

    private Reply begun(Ask ask) throws Exception {
        Optional<JsonNode> body = body(ask);
        if (body.isEmpty()) return NO_JSON;
        Begin begin = Begin.of(body.get());
        begin.write(folder);
        Notebook notebook = show(OWN);
        // the pattern's values are those of its own intent: what another one takes is worked out at once
        if (begin.isChanged()) notebook.start(LongWork.PROPOSE, Map.of("from", begin.pattern()));
        return Reply.json(told());
    }

    private Reply shown(Ask ask) throws Exception {
        Optional<JsonNode> body = body(ask);
        if (body.isEmpty()) return NO_JSON;
        show(body.get().path("build").asText(OWN));
        return Reply.json(told());
    }

    /** Empty for what is no JSON object, and does not say that it is one. */
    private static Optional<JsonNode> body(Ask ask) throws IOException, TooLarge {
        if (!ask.type().equals("application/json")) return Optional.empty();
        return Optional.ofNullable(MAPPER.readTree(ask.text(MOST_JSON))).filter(JsonNode::isObject);
    }

    private synchronized Notebook show(String name) throws BadInputException, IOException {
        Path path = name.equals(OWN) ? folder : folder.resolve(BenchDrop.name(name));
        if (!name.equals(OWN) && !beside().contains(name))
            throw Typed.bad(name, "there is no such build here", "Pick one of those that are.", Optional.empty());
        Notebook notebook = notebooks.get(name);
        if (notebook == null) {
            notebook = Notebook.open(path, clock, faults);
            notebooks.put(name, notebook);
        }
        shown = name;
        answers = Optional.of(new PageAnswers(notebook));
        for (Notebook other : notebooks.values()) other.listeners().tell("shown", told());
        return notebook;
    }

    private synchronized String told() {
        List<String> builds = beside();
        return Json.line(
                "shelf",
                json -> json.text("folder", name(folder)).text("shown", shown).texts("builds", builds));
    }

    static String name(Path folder) {
        return String.valueOf(folder.toAbsolutePath().normalize().getFileName());
    }

    /** Builds in folders of their own within this one, by plain names, in order. */
    private List<String> beside() {
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(p -> Files.isRegularFile(Layout.BUILD.in(p)) && !Files.isSymbolicLink(p))
                    .map(p -> p.getFileName().toString())
                    .filter(BenchDrop::isPlain)
                    .sorted()
                    .toList();
        } catch (IOException disk) {
            faults.accept(disk);
            return List.of();
        }
    }

    @Override
    public synchronized void close() {
        notebooks.values().forEach(Notebook::close);
    }
}
