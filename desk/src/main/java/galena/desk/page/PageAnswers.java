package galena.desk.page;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import galena.build.folder.Layout;
import galena.build.listen.ListenReport;
import galena.build.listen.SetKind;
import galena.build.predict.NoOperatingPoint;
import galena.build.source.BadInputException;
import galena.desk.server.Answerer;
import galena.desk.server.Ask;
import galena.desk.server.Reply;
import galena.desk.server.TooLarge;
import galena.desk.writing.Json;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the page asks, answered out of a notebook. Every answer under {@code /api/} is JSON with a kind, or a drawing. */
public final class PageAnswers implements Answerer {
    private static final long MOST_JSON = 64 * 1024;
    private static final int UNUSABLE = 422;
    private static final int CONFLICT = 409;
    private static final int BUSY = 503;
    private static final int LATER = 204;
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final Pattern WORK = Pattern.compile("/api/work/(\\d{1,12})(?:/([A-Za-z0-9-]+)\\.(svg|wav))?");
    private static final Pattern PACKET = Pattern.compile("/packet/([A-Za-z0-9][A-Za-z0-9._-]*)");

    /** A drawing brings its own style; it is shown as a picture, or by itself without any script. */
    private static final Map<String, String> STANDS_ALONE = Map.of(
            "Content-Security-Policy",
            "default-src 'none'; style-src 'unsafe-inline'; img-src 'self' data:; sandbox; frame-ancestors 'none'");

    private final Notebook notebook;
    private final BenchDrop bench;

    public PageAnswers(Notebook notebook) {
        this.notebook = notebook;
        this.bench = new BenchDrop(notebook);
    }

    @Override
    public Reply answer(Ask ask) throws Exception {
        try {
            if (ask.method().equals("POST")) return change(ask);
            if (ask.method().equals("DELETE")) return stop(ask);
            return read(ask);
        } catch (BadInputException bad) {
            return Reply.json(UNUSABLE, NotebookJson.refused(bad.problems()));
        } catch (Conflict conflict) {
            return Reply.json(CONFLICT, NotebookJson.conflict(conflict));
        } catch (NoOperatingPoint none) {
            return Reply.plain(UNUSABLE, String.valueOf(none.getMessage()));
        }
    }

    private Reply read(Ask ask) throws BadInputException, NoOperatingPoint, IOException {
        String path = ask.path();
        if (path.equals("/")) return Resources.of("index.html");
        if (path.startsWith("/page/")) return Resources.of(path.substring("/page/".length()));
        Matcher work = WORK.matcher(path);
        if (work.matches())
            return "wav".equals(work.group(3))
                    ? sound(Long.parseLong(work.group(1)), work.group(2))
                    : slip(Long.parseLong(work.group(1)), Optional.ofNullable(work.group(2)));
        Matcher packet = PACKET.matcher(path);
        if (packet.matches()) return published(packet.group(1));
        switch (path) {
            case "/api/state":
                return Reply.json(notebook.state());
            case "/api/picture":
                return json(notebook.picture());
            case "/api/note":
                return json(notebook.note(ask.parameter("of").orElse("")));
            case "/api/schematic":
                return notebook.schematic().<Reply>map(PageAnswers::drawing).orElseGet(() -> Reply.plain(LATER, ""));
            case "/api/plot":
                return drawing(bench.plot(
                        ask.parameter("capture").orElse(""),
                        ask.parameter("which").orElse("")));
            case "/api/programmes":
                List<String> there = Programmes.in(notebook.folder().folder());
                return Reply.json(Json.line("programmes", json -> {
                    json.texts("recordings", there);
                    json.each("sets", List.of(SetKind.values()), set -> json.text("word", set.word())
                            .text("words", set.words()));
                    json.text("caution", ListenReport.CAUTION);
                }));
            case "/api/captures":
                List<String> captures = bench.captures();
                return Reply.json(Json.line("captures", json -> json.texts("captures", captures)));
            case "/api/capture":
                return Reply.json(bench.measured(ask.parameter("name").orElse("")));
            case "/api/beside":
                return Reply.json(bench.beside(
                        ask.parameter("capture").orElse(""), ask.parameter("at").orElse(""), ask.parameter("audio")));
            case "/api/events":
                return events();
            default:
                return Reply.missing();
        }
    }

    private Reply events() {
        return notebook.listeners().full()
                ? Reply.plain(BUSY, "As many pages are open as can be kept in step; close one.")
                : new Reply.Stream(notebook.listeners()::listen);
    }

    private static Reply drawing(Optional<String> svg) {
        return svg.<Reply>map(PageAnswers::drawing).orElseGet(Reply::missing);
    }

    private static Reply json(Optional<String> text) {
        return text.<Reply>map(Reply::json).orElseGet(Reply::missing);
    }

    static Reply.Whole drawing(String svg) {
        return new Reply.Whole(
                200, "image/svg+xml", svg.getBytes(java.nio.charset.StandardCharsets.UTF_8), STANDS_ALONE);
    }

    private Reply slip(long id, Optional<String> drawing) {
        Optional<Jobs.Job> job = notebook.jobs().find(id);
        Optional<Slip> slip = job.flatMap(Jobs.Job::slip);
        if (slip.isEmpty()) return Reply.missing();
        if (drawing.isEmpty()) return Reply.json(JobJson.slip(job.orElseThrow(), slip.get()));
        return slip.get().drawings().stream()
                .filter(d -> d.name().replaceFirst("\\.svg$", "").equals(drawing.get()))
                .findFirst()
                .<Reply>map(d -> drawing(d.svg()))
                .orElseGet(Reply::missing);
    }

    private Reply sound(long id, String name) throws IOException {
        Optional<Slip.Sound> sound = notebook.jobs()
                .find(id)
                .flatMap(Jobs.Job::slip)
                .flatMap(slip -> slip.sounds().stream()
                        .filter(s -> s.name().equals(name))
                        .findFirst());
        if (sound.isEmpty() || !Files.isRegularFile(sound.get().file())) return Reply.missing();
        return Reply.bytes("audio/wav", Files.readAllBytes(sound.get().file()));
    }

    /** A file of the packet, and nothing beside it: no folder, no link that leads out. */
    private Reply published(String name) throws IOException {
        Path packet = Layout.PACKET.in(notebook.folder().folder());
        Path file = packet.resolve(name);
        if (!Files.isRegularFile(file) || !file.toRealPath().startsWith(packet.toRealPath())) return Reply.missing();
        return new Reply.Whole(200, type(name), Files.readAllBytes(file), STANDS_ALONE);
    }

    private static String type(String name) {
        if (name.endsWith(".pdf")) return "application/pdf";
        if (name.endsWith(".json")) return "application/json;charset=utf-8";
        if (name.endsWith(".csv") || name.endsWith(".txt")) return "text/plain;charset=utf-8";
        return name.endsWith(".js") ? "text/plain;charset=utf-8" : Resources.type(name);
    }

    private Reply change(Ask ask) throws BadInputException, IOException, TooLarge, Conflict {
        if (ask.path().equals("/api/capture")) return Reply.json(bench.keep(ask));
        if (ask.path().equals("/api/programme")) {
            String kept = bench.programme(ask);
            return Reply.json(Json.line("programme", json -> json.text("name", kept)));
        }
        if (!ask.type().equals("application/json")) return Reply.plain(415, "JSON is expected here.");
        JsonNode body;
        try {
            body = MAPPER.readTree(ask.text(MOST_JSON));
        } catch (JsonProcessingException broken) {
            return Reply.plain(400, "This is not JSON.");
        }
        if (body == null || !body.isObject()) return Reply.plain(400, "A JSON object is expected here.");
        return change(ask.path(), body);
    }

    private Reply change(String path, JsonNode body) throws BadInputException, IOException, Conflict {
        switch (path) {
            case "/api/lay":
                return json(notebook.lay(laying(body)));
            case "/api/trim":
                Optional<String> trimmed = notebook.trim();
                if (trimmed.isPresent()) return Reply.json(trimmed.get());
                throw Typed.bad(
                        "carrier",
                        "no adjustment brings it there",
                        "See what each reaches, under Align.",
                        Optional.empty());
            case "/api/write":
                notebook.write(text(body, "path").orElse(""), text(body, "seen"), text(body, "text"));
                return Reply.json(notebook.state());
            case "/api/undo", "/api/redo":
                boolean made = notebook.step(path.equals("/api/undo"));
                return made ? Reply.json(notebook.state()) : Reply.plain(409, "There is nothing to take back.");
            case "/api/work":
                Optional<LongWork> work = LongWork.named(text(body, "word").orElse(""));
                return work.isPresent()
                        ? Reply.json(JobJson.of(notebook.start(work.get(), texts(body))))
                        : Reply.missing();
            case "/api/take":
                notebook.take(text(body, "build").orElse(""));
                return Reply.json(notebook.state());
            case "/api/drop":
                notebook.drop();
                return Reply.json(notebook.state());
            case "/api/file":
                int filed = bench.file(text(body, "capture").orElse(""), text(body, "at"), text(body, "audio"));
                return Reply.json(Json.line("filed", json -> json.number("count", filed)));
            case "/api/reading":
                bench.note(
                        text(body, "what").orElse(""),
                        text(body, "text").orElse(""),
                        text(body, "at"),
                        text(body, "audio"));
                return Reply.json(notebook.state());
            default:
                return Reply.missing();
        }
    }

    private Reply stop(Ask ask) {
        Matcher work = WORK.matcher(ask.path());
        boolean stopped = work.matches() && notebook.jobs().stop(Long.parseLong(work.group(1)));
        if (stopped) notebook.tellState();
        return stopped ? Reply.json(Json.line("stopped", json -> json.text("id", work.group(1)))) : Reply.missing();
    }

    /** Reads what shall be laid over before anything is changed. */
    private UnaryOperator<Laid> laying(JsonNode body) throws BadInputException {
        Optional<String> adjustment = text(body, "adjustment");
        if (adjustment.isPresent()) {
            String name = adjustment.get();
            if (!notebook.folder().build().adjustments().contains(name))
                throw Typed.bad(
                        "adjustment", "nothing named \"" + name + "\" can be set", "See the margin.", Optional.empty());
            if (body.path("position").isNumber()) {
                double position = body.get("position").asDouble();
                if (!(position >= 0 && position <= 1))
                    throw Typed.bad(
                            name, position + " is out of range", "A position runs from 0 to 1.", Optional.empty());
                return laid -> laid.turned(name, position);
            }
            Optional<String> typed = text(body, "text");
            if (typed.isEmpty()) return laid -> laid.released(name);
            double position = Typed.position(name, typed.get());
            return laid -> laid.turned(name, position);
        }
        Optional<String> temperature = text(body, "temperature"), supply = text(body, "supply");
        if (temperature.isPresent()) {
            OptionalDouble celsius = temperature.get().isBlank()
                    ? OptionalDouble.empty()
                    : OptionalDouble.of(Typed.celsius(temperature.get()));
            return laid -> laid.warmed(celsius);
        }
        if (supply.isPresent()) {
            OptionalDouble volts =
                    supply.get().isBlank() ? OptionalDouble.empty() : OptionalDouble.of(Typed.volts(supply.get()));
            return laid -> laid.fed(volts);
        }
        return laid -> Laid.NOTHING;
    }

    private static Map<String, String> texts(JsonNode body) {
        Map<String, String> texts = new LinkedHashMap<>();
        for (Map.Entry<String, JsonNode> one : body.properties())
            if (one.getValue().isTextual())
                texts.put(one.getKey(), one.getValue().asText());
        return texts;
    }

    private static Optional<String> text(JsonNode body, String name) {
        JsonNode value = body.get(name);
        return value == null || !value.isTextual() ? Optional.empty() : Optional.of(value.asText());
    }
}
