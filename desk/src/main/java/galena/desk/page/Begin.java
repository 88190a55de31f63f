package galena.desk.page;

import com.fasterxml.jackson.databind.JsonNode;
import galena.build.folder.Build;
import galena.build.folder.BuildReader;
import galena.build.folder.Layout;
import galena.build.folder.PartEntry;
import galena.build.pattern.Pattern;
import galena.build.source.BadInputException;
import galena.build.source.Edit;
import galena.build.source.Editor;
import galena.build.source.Saver;
import galena.build.source.SourceFile;
import galena.desk.server.Reply;
import galena.desk.writing.Json;
import galena.trade.device.DeviceLibrary;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A build begun from a pattern on the page, as {@code galena new} begins one, with the builder's own wishes in the pattern's intent.
 *
 * @param pattern by name
 * @param wishes path in the build file to the text that shall stand there; empty texts leave the pattern's
 */
record Begin(String pattern, Map<String, String> wishes) {
    private static final int LATER = 204;
    private static final String CARRIER = "intent.carrier";
    private static final String BATTERY = "supply.battery";
    private static final java.util.regex.Pattern VOLTS = java.util.regex.Pattern.compile("(?i)[0-9.,]+ *m?v");
    private static final List<String> ASKED = List.of("name", CARRIER, "intent.distance", BATTERY);

    Begin {
        wishes = Map.copyOf(wishes);
    }

    static Begin of(JsonNode body) throws BadInputException {
        Pattern pattern = Pattern.named(body.path("pattern").asText(""));
        Map<String, String> wishes = new LinkedHashMap<>();
        for (String path : ASKED) {
            String text = body.path(path).asText("").strip();
            if (!text.isEmpty()) wishes.put(path, text);
        }
        return new Begin(pattern.name(), wishes);
    }

    /** Whether the intent is another than the one that the pattern's values were found for. */
    boolean isChanged() {
        Build own = build(patternOf(pattern));
        return ASKED.stream()
                .filter(path -> !path.equals("name"))
                .anyMatch(path -> wishes.containsKey(path) && !wishes.get(path).equals(text(own, path)));
    }

    /** Writes it; nothing is written when a wish can't stand, or something is there already. */
    void write(Path folder) throws BadInputException, IOException {
        Build own = build(patternOf(pattern));
        String text = patternOf(pattern).text();
        String battery = wishes.getOrDefault(BATTERY, "");
        if (VOLTS.matcher(battery).matches())
            text = text.replace("{battery: " + text(own, BATTERY) + "}", "{voltage: " + battery + ", resistance: 0 Ω}");
        if (wishes.containsKey(CARRIER) && !wishes.get(CARRIER).equals(text(own, CARRIER)))
            text = text.replaceFirst(
                    "(?m)^(  carrier: [^#\\n]*?) *#.*$", "$1"); // the remark is of the pattern's channel
        SourceFile changed =
                SourceFile.of(Layout.BUILD.in(folder), Layout.BUILD.place(), text.getBytes(StandardCharsets.UTF_8));
        for (Map.Entry<String, String> wish : wishes.entrySet()) {
            String before = text(own, wish.getKey());
            boolean isVolts =
                    wish.getValue().equals(battery) && VOLTS.matcher(battery).matches();
            boolean done = isVolts || wish.getValue().equals(before);
            if (!done) changed = Editor.apply(changed, Edit.change(wish.getKey(), before, wish.getValue()));
        }
        BuildReader.read(changed, Shelf.name(folder), DeviceLibrary.standard());
        Path written = Pattern.write(pattern, folder);
        Saver.save(SourceFile.read(written, Layout.BUILD.place()), changed);
    }

    private static Pattern patternOf(String name) {
        return Pattern.all().stream()
                .filter(p -> p.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static Build build(Pattern pattern) {
        try {
            byte[] bytes = pattern.text().getBytes(StandardCharsets.UTF_8);
            SourceFile file = SourceFile.of(Path.of(Layout.BUILD.place()), Layout.BUILD.place(), bytes);
            return BuildReader.read(file, pattern.name(), DeviceLibrary.standard());
        } catch (BadInputException ours) {
            throw new IllegalStateException("the pattern " + pattern.name() + " can't be read", ours);
        }
    }

    private static String text(Build build, String path) {
        return NotebookJson.text(build, path).orElse("");
    }

    /** What there is to begin from, as JSON. */
    static String offered(Path folder) {
        return Json.line(
                "start", json -> json.text("folder", Shelf.name(folder)).each("patterns", Pattern.all(), pattern -> {
                    Build build = build(pattern);
                    json.text("name", pattern.name()).text("summary", pattern.summary());
                    json.text("title", text(build, "name"));
                    json.text("carrier", text(build, CARRIER)).text("distance", text(build, "intent.distance"));
                    json.text("supply", text(build, BATTERY));
                    json.number("parts", (double) build.parts().size());
                    json.texts(
                            "devices",
                            build.parts().values().stream()
                                    .map(PartEntry::type)
                                    .flatMap(Optional::stream)
                                    .distinct()
                                    .toList());
                }));
    }

    /** The pattern's schematic, as it will stand in the notebook; without content where it is placed only when the build is begun. */
    static Reply drawing(String name) throws BadInputException, IOException {
        Optional<String> svg = Drawn.ready(build(Pattern.named(name)));
        return svg.<Reply>map(PageAnswers::drawing).orElseGet(() -> Reply.plain(LATER, ""));
    }
}
