package galena.build.folder;

import galena.build.form.Filled;
import galena.build.form.Notes;
import galena.build.quantity.Quantity;
import galena.build.source.BadInputException;
import galena.build.source.ListEnd;
import galena.build.source.Problems;
import galena.build.source.Saver;
import galena.build.source.SourceFile;
import galena.build.source.YamlReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Writes readings into the bench log. */
final class BenchLog {
    private static final String NEW = "galena: 1\nreadings: []\n";

    private BenchLog() {}

    static void add(Path folder, Build build, List<LogEntry> readings) throws BadInputException, IOException {
        if (readings.isEmpty()) return;
        Path path = Layout.LOG.in(folder);
        boolean begun = Files.exists(path);
        SourceFile read = begun
                ? SourceFile.read(path, Layout.LOG.place())
                : SourceFile.of(path, Layout.LOG.place(), NEW.getBytes(StandardCharsets.UTF_8));
        SourceFile changed = ListEnd.add(
                read, "readings", readings.stream().map(BenchLog::written).toList());
        BuildFolder.check(filled(changed), build);
        if (begun) Saver.save(read, changed);
        else Saver.create(changed);
    }

    private static Filled filled(SourceFile file) throws BadInputException {
        Problems problems = new Problems();
        Optional<Filled> filled =
                LogEntry.FORM.read(YamlReader.read(file, problems), new Notes(problems, "This is a bench log."));
        problems.throwIfAny();
        return filled.orElseThrow();
    }

    private static Map<String, Object> written(LogEntry reading) {
        Map<String, Object> keys = new LinkedHashMap<>();
        keys.put(reading.what().key(), reading.value().text());
        put(keys, "uncertainty", reading.uncertainty().map(Quantity::text));
        put(keys, "at", reading.at());
        put(keys, "when", reading.when());
        put(keys, "how", reading.how());
        Circumstances c = reading.circumstances();
        put(keys, "instrument", c.instrument());
        put(keys, "probe", c.probe());
        if (!c.set().isEmpty()) {
            Map<String, Object> set = new LinkedHashMap<>();
            c.set().forEach((name, position) -> set.put(name, position.text()));
            keys.put("set", set);
        }
        put(keys, "temperature", c.temperature().map(Quantity::text));
        put(keys, "supply", c.supply().map(Quantity::text));
        put(keys, "audio", c.audio().map(Quantity::text));
        put(keys, "added", c.added().map(Quantity::text));
        put(keys, "capture", c.capture());
        return keys;
    }

    private static void put(Map<String, Object> keys, String key, Optional<String> value) {
        value.ifPresent(v -> keys.put(key, v));
    }
}
