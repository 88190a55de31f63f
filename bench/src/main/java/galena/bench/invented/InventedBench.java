package galena.bench.invented;

import galena.bench.capture.Overrides;
import galena.bench.capture.UnreadableCapture;
import galena.bench.log.Filing;
import galena.bench.measure.Expected;
import galena.bench.measure.Measure;
import galena.bench.measure.Report;
import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.Circumstances;
import galena.build.folder.Layout;
import galena.build.folder.LogEntry;
import galena.build.folder.LogEntry.What;
import galena.build.folder.Overlay;
import galena.build.folder.TestPoint;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.PredictedReadings;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.predict.TimePicture;
import galena.build.quantity.BadQuantity;
import galena.build.quantity.Engineering;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/** Lays invented captures and readings into the bench of the demo build. */
public final class InventedBench {
    /** On which everything here is said to have been read. */
    public static final String DAY = "2026-03-07";

    /** The capture of a tone at the output, in the build's bench. */
    public static final String TONE = "invented-tone-TP2.csv";

    private static final String CARRIER = "invented-carrier-TP1.csv";
    private static final String WARM_UP = "invented-warm-up.csv";

    private static final double TONE_HERTZ = 1000;
    /** Share of the intent's programme level that the tone has: about 80 % of modulation. */
    private static final double TONE_SHARE = 0.8;

    private static final int LOG_STEP = 10;
    private static final int LOG_ROWS = 181;
    private static final double TIME_CONSTANT = 420;
    private static final String BEGUN =
            """
            # Every reading here is invented: computed by galena demo from a changed copy of the demo build.
            galena: 1
            readings: []
            """;

    private final BuildFolder folder;
    private final Build build;
    private final Overlay truth;
    private final Progress progress;
    private final Random random = new Random(1909);

    private InventedBench(BuildFolder folder, Progress progress) {
        this.folder = folder;
        this.build = folder.build();
        this.progress = progress;
        truth = Truth.over(build);
    }

    /**
     * Computes and writes everything, measures the captures, and files the readings in the log.
     *
     * @param folder of the demo build as it comes, without a bench
     * @return the reports of the captures
     */
    public static List<Report> lay(BuildFolder folder, Progress progress)
            throws BadInputException, NoOperatingPoint, Running.NotRunning, IOException {
        return new InventedBench(folder, progress).lay();
    }

    private List<Report> lay() throws BadInputException, NoOperatingPoint, Running.NotRunning, IOException {
        write(TONE, tone(point("TP2")));
        write(CARRIER, carrier(point("TP1")));
        write(WARM_UP, warmUp());
        Files.writeString(Layout.LOG.in(folder.folder()), BEGUN, StandardCharsets.UTF_8);
        List<Report> reports = new ArrayList<>();
        List<LogEntry> readings = new ArrayList<>();
        Quantity audio = printed(level(), Unit.VOLT, 2);
        file(TONE, "TP2", "19:30", "scope, 8 bit", Optional.of(audio), reports, readings);
        file(CARRIER, "TP1", "19:40", "scope, 8 bit", Optional.empty(), reports, readings);
        reports.add(measured(WARM_UP));
        readings.addAll(byEye());
        folder.note(readings);
        return reports;
    }

    private TestPoint point(String name) {
        return Optional.ofNullable(build.points().get(name)).orElseThrow();
    }

    private double level() {
        return TONE_SHARE * build.intent().programme().orElseThrow().level().value();
    }

    private String tone(TestPoint point) throws BadInputException, NoOperatingPoint, Running.NotRunning {
        Running running = PredictedReadings.running(build, truth, Optional.of(point), progress);
        TimePicture picture = TimePicture.of(running, point, level(), progress)
                .orElseThrow(() -> new IllegalStateException("the demo build stops oscillating while it is modulated"));
        double[] turns = {0, 0}; // carrier periods so far, and the time up to which they are counted
        DoubleUnaryOperator volts = t -> {
            double audio = picture.reach() * Math.sin(2 * Math.PI * TONE_HERTZ * t);
            turns[0] += picture.frequency(audio) * (t - turns[1]);
            turns[1] = t;
            return picture.voltage(audio, turns[0] - Math.floor(turns[0]));
        };
        return new Scope(100e-9, 32_000, 31).column(volts);
    }

    private String carrier(TestPoint point) throws BadInputException, NoOperatingPoint, Running.NotRunning {
        Running running = PredictedReadings.running(build, truth, Optional.of(point), progress);
        return new Scope(20e-9, 5000, 37).table(PredictedReadings.voltage(running, point));
    }

    /** A counter's log while the box warms up, the frequency following the predicted drift. */
    private String warmUp() throws BadInputException, NoOperatingPoint, Running.NotRunning {
        double cold = frequency(truth), warm = frequency(truth.atTemperature(Truth.WARM));
        StringBuilder text = new StringBuilder("# invented by galena demo, never measured\ntime;frequency (kHz)\n");
        for (int k = 0; k < LOG_ROWS; k++) {
            int seconds = k * LOG_STEP;
            double f = warm + (cold - warm) * Math.exp(-seconds / TIME_CONSTANT) + 2 * random.nextGaussian();
            text.append(String.format(Locale.ROOT, "%s 19:%02d:%02d;%.4f%n", DAY, seconds / 60, seconds % 60, f / 1e3)
                    .replace("\r", ""));
        }
        return text.toString();
    }

    private double frequency(Overlay overlay) throws BadInputException, NoOperatingPoint, Running.NotRunning {
        return PredictedReadings.carrier(PredictedReadings.running(build, overlay, Optional.empty(), progress));
    }

    /** A meter at the supply and at a test point, and a counter at two more places of the trimmer. */
    private List<LogEntry> byEye() throws BadInputException, NoOperatingPoint, Running.NotRunning {
        List<LogEntry> readings = new ArrayList<>();
        double drawn =
                PredictedReadings.supplyCurrent(PredictedReadings.running(build, truth, Optional.empty(), progress));
        readings.add(eye(What.CURRENT, drawn, 0.01, 3, Map.of(), "meter in the battery lead"));
        for (double position : new double[] {0.2, 1.0}) {
            double f = frequency(truth.set("Ct", position));
            readings.add(eye(What.CARRIER, f, 5e-5, 5, Map.of("Ct", position), "counter, loosely coupled"));
        }
        return readings;
    }

    /** @param share of the value that is its uncertainty; the reading errs within it, and is read to so many digits */
    private LogEntry eye(What what, double value, double share, int digits, Map<String, Double> set, String how) {
        double read = value * (1 + share * (2 * random.nextDouble() - 1) / 2);
        return new LogEntry(
                what,
                printed(read, what.unit(), digits),
                Optional.of(printed(share * value, what.unit(), 1)),
                Optional.empty(),
                Optional.of(DAY + " 20:10"),
                Optional.of("invented; " + how + ", by eye"),
                circumstances(Optional.empty(), Optional.empty(), set, Optional.empty()),
                new Place(Layout.LOG.place(), 1, 1));
    }

    private Circumstances circumstances(
            Optional<String> instrument, Optional<String> probe, Map<String, Double> set, Optional<Quantity> audio) {
        Map<String, Quantity> positions = new LinkedHashMap<>();
        for (String name : build.adjustments()) {
            double stands = build.part(name).orElseThrow().position().orElseThrow();
            positions.put(name, Quantity.of(set.getOrDefault(name, stands), Unit.FRACTION));
        }
        return new Circumstances(
                instrument,
                probe,
                positions,
                Optional.of(Quantity.of(Truth.ROOM + 273.15, Unit.KELVIN)),
                Optional.of(Quantity.of(Truth.SUPPLY, Unit.VOLT)),
                audio,
                Optional.empty());
    }

    private void file(
            String name,
            String at,
            String time,
            String instrument,
            Optional<Quantity> audio,
            List<Report> reports,
            List<LogEntry> readings)
            throws UnreadableCapture {
        Report report = measured(name);
        reports.add(report);
        Circumstances circumstances =
                circumstances(Optional.of("invented " + instrument), Optional.of("10x"), Map.of(), audio);
        readings.addAll(Filing.entries(report, Optional.of(at), DAY + " " + time, circumstances));
    }

    private Report measured(String name) throws UnreadableCapture {
        Expected expected = build.intent()
                .carrier()
                .map(c -> Expected.nothing().withCarrier(c.value()))
                .orElse(Expected.nothing());
        return Measure.file(Layout.BENCH.in(folder.folder()).resolve(name), Overrides.none(), expected);
    }

    private void write(String name, String text) throws IOException {
        Path file = Layout.BENCH.in(folder.folder()).resolve(name);
        Files.createDirectories(Layout.BENCH.in(folder.folder()));
        Files.writeString(file, text, StandardCharsets.UTF_8);
    }

    private static Quantity printed(double value, Unit unit, int digits) {
        try {
            return Quantity.read(Engineering.print(value, unit, digits), unit);
        } catch (BadQuantity ours) {
            throw new IllegalStateException("printed what cannot be read", ours);
        }
    }
}
