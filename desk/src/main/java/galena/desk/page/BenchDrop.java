package galena.desk.page;

import galena.bench.capture.Capture;
import galena.bench.capture.Captures;
import galena.bench.capture.Overrides;
import galena.bench.capture.UnreadableCapture;
import galena.bench.log.Filing;
import galena.bench.measure.Expected;
import galena.bench.measure.Measure;
import galena.bench.measure.Reading;
import galena.bench.measure.Report;
import galena.bench.plot.Plots;
import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.Circumstances;
import galena.build.folder.Layout;
import galena.build.folder.LogEntry;
import galena.build.folder.LogEntry.What;
import galena.build.folder.PartEntry;
import galena.build.folder.Probe;
import galena.build.folder.TestPoint;
import galena.build.predict.NoOperatingPoint;
import galena.build.quantity.BadQuantity;
import galena.build.quantity.Quantity;
import galena.build.quantity.Uncertain;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import galena.desk.server.Ask;
import galena.desk.server.TooLarge;
import galena.desk.writing.Json;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Captures dropped onto the page, and readings noted by hand. Captures are kept in the build's bench folder; none is written over. */
final class BenchDrop {
    /** A second of fast samples as text, and far more than a scope exports. */
    static final long MOST_BYTES = 256L << 20;

    private static final int LONGEST_NAME = 100;
    private static final int MOST_ALIKE = 1000;
    private static final Pattern NAME = Pattern.compile("[A-Za-z0-9][A-Za-z0-9 ._()+-]*");

    private static final String AUDIO_RULE = "The audio level is the peak at the source, as 300 mV, from 0 V to 100 V.";

    private static final int MOST_REPORTS = 8;

    private final Notebook notebook;
    private final Map<String, Report> reports = new HashMap<>();

    BenchDrop(Notebook notebook) {
        this.notebook = notebook;
    }

    /** Keeps a capture under its name, or one much like it, and measures it. */
    String keep(Ask ask) throws BadInputException, IOException, TooLarge {
        return measured(take(ask, Layout.BENCH.in(notebook.folder().folder())));
    }

    /** Keeps a recording to be sent, in the build's folder; its name there. */
    String programme(Ask ask) throws BadInputException, IOException, TooLarge {
        String name = name(ask.parameter("name").orElse(""));
        if (!name.toLowerCase(Locale.ROOT).endsWith(".wav"))
            throw Typed.bad("programme", name + " is no WAV", "A plain WAV is read.", Optional.empty());
        return String.valueOf(take(ask, notebook.folder().folder()).getFileName());
    }

    private static Path take(Ask ask, Path into) throws BadInputException, IOException, TooLarge {
        String name = name(ask.parameter("name").orElse(""));
        Files.createDirectories(into);
        Path half = Files.createTempFile(into, ".dropped", ".half");
        try {
            try (OutputStream out = Files.newOutputStream(half)) {
                ask.copy(out, MOST_BYTES);
            }
            Path kept = place(into, name, half);
            if (!Files.exists(kept)) Files.move(half, kept);
            return kept;
        } finally {
            Files.deleteIfExists(half);
        }
    }

    /** A place that is free, or that holds the very same bytes. */
    private static Path place(Path bench, String name, Path half) throws IOException {
        int dot = name.lastIndexOf('.') > 0 ? name.lastIndexOf('.') : name.length();
        for (int k = 1; k < MOST_ALIKE; k++) {
            String tried = k == 1 ? name : name.substring(0, dot) + "-" + k + name.substring(dot);
            Path place = bench.resolve(tried);
            if (!Files.exists(place) || Files.mismatch(place, half) < 0) return place;
        }
        throw new IOException("there are " + MOST_ALIKE + " captures of the name " + name);
    }

    /** Whether it is a plain file name that leads nowhere else. */
    static boolean isPlain(String given) {
        return NAME.matcher(given).matches() && given.length() <= LONGEST_NAME && !given.contains("..");
    }

    /** A plain file name; whatever leads to a folder is refused. */
    static String name(String given) throws BadInputException {
        if (isPlain(given)) return given;
        throw Typed.bad(
                "capture",
                "\"" + given + "\" is no name for a capture",
                "A name has letters, digits, blanks, points, brackets and hyphens, and begins with a letter or digit.",
                Optional.of("Rename the file, then drop it again."));
    }

    /** A capture that is in the bench folder. */
    private Path kept(String given) throws BadInputException {
        Path file = Layout.BENCH.in(notebook.folder().folder()).resolve(name(given));
        if (Files.isRegularFile(file)) return file;
        throw Typed.bad("capture", "there is no " + given + " in bench", "Drop it first.", Optional.empty());
    }

    private String measured(Path file) throws BadInputException, IOException {
        String name = file.getFileName().toString();
        try {
            Report report = report(file);
            return Json.line("capture", json -> write(json, name, report));
        } catch (UnreadableCapture unreadable) {
            throw Typed.bad(
                    unreadable.place(),
                    unreadable.cause(),
                    "It is kept in bench all the same.",
                    Optional.of(unreadable.remedy() + "."));
        }
    }

    /** Measured once as long as neither the file nor the wanted carrier changes. */
    private Report report(Path file) throws UnreadableCapture, IOException {
        BasicFileAttributes now = Files.readAttributes(file, BasicFileAttributes.class);
        String key = file.getFileName() + " " + now.lastModifiedTime() + " " + now.size() + " "
                + notebook.folder().build().intent().carrier();
        synchronized (reports) {
            Report known = reports.get(key);
            if (known != null) return known;
        }
        Report fresh = fresh(file);
        synchronized (reports) {
            if (reports.size() >= MOST_REPORTS) reports.clear();
            reports.put(key, fresh);
        }
        return fresh;
    }

    private Report fresh(Path file) throws UnreadableCapture {
        Expected known = Expected.nothing();
        Optional<Quantity> carrier = notebook.folder().build().intent().carrier();
        if (carrier.isPresent()) known = known.withCarrier(carrier.get().value());
        return Measure.file(file, Overrides.none(), known);
    }

    private void write(Json json, String name, Report report) {
        json.text("name", name).text("verdict", report.verdict());
        Optional<LogEntry> noted = notebook.folder().log().stream()
                .filter(e -> e.circumstances().capture().equals(Optional.of(name)))
                .findFirst();
        json.text("at", noted.flatMap(LogEntry::at).orElse(""))
                .text(
                        "audio",
                        noted.flatMap(e -> e.circumstances().audio())
                                .map(Quantity::text)
                                .orElse(""));
        json.text("layout", report.understanding().layout())
                .text("interval", report.understanding().intervalSource());
        json.each("figures", report.figures(), f -> json.text("label", f.label())
                .text("words", f.words().replace('-', '−'))
                .text("how", f.quantity() + ": " + f.how())
                .truth("known", f.reading() instanceof Reading.Known));
        json.texts(
                "findings",
                report.findings().stream()
                        .map(f -> f.sentence().replaceAll("-(?=\\d)", "−"))
                        .toList());
        json.texts("plots", plots(report).keySet());
    }

    private static Map<String, String> plots(Report report) {
        Map<String, String> plots = new LinkedHashMap<>();
        Plots.waveform(report).ifPresent(svg -> plots.put("waveform", svg));
        Plots.spectrum(report).ifPresent(svg -> plots.put("spectrum", svg));
        Plots.trapezoid(report).ifPresent(svg -> plots.put("trapezoid", svg));
        return plots;
    }

    /** One of a capture's plots; empty when it has none of that kind. */
    Optional<String> plot(String capture, String which) throws BadInputException, IOException {
        return Optional.ofNullable(plots(report(kept(capture))).get(which));
    }

    /** The captures that lie in the bench folder, by name. */
    List<String> captures() throws IOException {
        Path bench = Layout.BENCH.in(notebook.folder().folder());
        if (!Files.isDirectory(bench)) return List.of();
        try (Stream<Path> all = Files.list(bench)) {
            return all.filter(Files::isRegularFile)
                    .map(p -> p.getFileName().toString())
                    .filter(n -> isPlain(n) && !n.endsWith(".yaml") && !n.endsWith(".sigmf-meta"))
                    .sorted()
                    .toList();
        }
    }

    /** What a capture that lies in the bench folder says. */
    String measured(String capture) throws BadInputException, IOException {
        return measured(kept(capture));
    }

    /** A capture over the prediction of a test point, as JSON. */
    String beside(String capture, String at, Optional<String> audio)
            throws BadInputException, NoOperatingPoint, IOException {
        BuildFolder folder = notebook.folder();
        String name = point(folder.build(), Optional.of(at))
                .filter(n -> !n.isBlank())
                .orElseThrow(() -> Typed.bad(
                        "test point", "none is named", "A waveform belongs to a place.", Optional.of("Pick one.")));
        TestPoint point = Objects.requireNonNull(folder.build().points().get(name));
        OptionalDouble level = audio.filter(a -> !a.isBlank()).isPresent()
                ? OptionalDouble.of(Typed.quantity("audio", audio.get(), Unit.VOLT, 0, 100, AUDIO_RULE))
                : OptionalDouble.empty();
        Path file = kept(capture);
        try {
            Capture read = Captures.read(file, Overrides.none());
            return CaptureBeside.of(folder, notebook.overlay(), point, read, report(file), level, notebook.whole());
        } catch (UnreadableCapture unreadable) {
            throw Typed.bad(unreadable.place(), unreadable.cause(), "It can't be drawn.", Optional.empty());
        }
    }

    /** Files what a capture says in the log; how many readings that were not there yet. */
    int file(String capture, Optional<String> at, Optional<String> audio) throws BadInputException, IOException {
        BuildFolder folder = notebook.folder();
        Optional<String> point = point(folder.build(), at);
        List<LogEntry> entries = Filing.fresh(
                Filing.entries(
                        report(kept(capture)), point, notebook.now(), circumstances(folder.build(), point, audio)),
                folder.log());
        if (!entries.isEmpty()) notebook.note(entries);
        return entries.size();
    }

    /** Notes a reading taken by eye. */
    void note(String kind, String text, Optional<String> at, Optional<String> audio)
            throws BadInputException, IOException {
        Build build = notebook.folder().build();
        Optional<What> what = What.of(kind);
        if (what.isEmpty())
            throw Typed.bad(
                    "reading", "\"" + kind + "\" is no kind of reading", "Pick one of the list.", Optional.empty());
        Optional<String> point = point(build, at);
        Uncertain read;
        try {
            read = Uncertain.read(text, what.get().unit());
        } catch (BadQuantity bad) {
            throw Typed.bad(
                    what.get().inWords(), bad.found(), bad.rule(), bad.nearest().map(n -> "Nearest: " + n));
        }
        double digit = Double.parseDouble(String.format(Locale.ROOT, "%.6e", read.half()));
        Quantity half =
                read.stated().orElseGet(() -> Quantity.of(digit, what.get().unit()));
        notebook.note(List.of(new LogEntry(
                what.get(),
                read.value(),
                Optional.of(half),
                point,
                Optional.of(notebook.now()),
                Optional.of("by eye"),
                circumstances(build, point, audio),
                new Place(Layout.LOG.place(), 1, 1))));
    }

    private static Optional<String> point(Build build, Optional<String> at) throws BadInputException {
        Optional<String> named = at.filter(a -> !a.isBlank());
        if (named.isEmpty() || build.points().containsKey(named.get())) return named;
        throw Typed.bad(
                "test point",
                "no test point is named \"" + named.get() + '"',
                "Test points: " + String.join(", ", build.points().keySet()) + ".",
                Optional.empty());
    }

    /** As the build is set. */
    private static Circumstances circumstances(Build build, Optional<String> point, Optional<String> audio)
            throws BadInputException {
        Map<String, Quantity> set = new LinkedHashMap<>();
        for (PartEntry part : build.parts().values())
            part.position().ifPresent(p -> set.put(part.name(), Quantity.of(p, Unit.FRACTION)));
        Optional<Quantity> tone = Optional.empty();
        if (audio.filter(a -> !a.isBlank()).isPresent()) {
            tone = Optional.of(new Quantity(
                    Typed.quantity("audio", audio.get(), Unit.VOLT, 0, 100, AUDIO_RULE),
                    Unit.VOLT,
                    audio.get().strip()));
        }
        Optional<String> probe =
                point.map(build.points()::get).flatMap(TestPoint::probe).map(Probe::name);
        return new Circumstances(
                Optional.empty(), probe, set, Optional.empty(), Optional.empty(), tone, Optional.empty());
    }
}
