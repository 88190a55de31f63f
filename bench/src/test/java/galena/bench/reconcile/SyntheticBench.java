package galena.bench.reconcile;

import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.Circumstances;
import galena.build.folder.LogEntry;
import galena.build.folder.LogEntry.What;
import galena.build.predict.Progress;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.readings.Asked;
import galena.build.readings.ReadingModel;
import galena.build.source.Place;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;

/**
 * Benches whose truth is known: copies of the demo build, everything unknown of them drawn from what is known before any reading, read
 * with errors drawn from what each reading says of itself. Circuits are solved from cold, each on its own mesh.
 */
final class SyntheticBench {
    private static final String DEMO = "/galena/demo/build.yaml";

    /** Where a builder who looks for a fault puts the tip besides: the probe's on nets that swing, the meter's on those at rest. */
    private static final Map<String, String> SWINGING = Map.of("TPd", "drain", "TPb", "base2", "TPt", "tail");

    private static final Map<String, String> AT_REST =
            new TreeMap<>(Map.of("orail", "orail", "bias", "bias", "base3", "base3", "mod", "mod", "foot", "foot"));

    final BuildFolder folder;
    final Build build;
    private final boolean careful;

    SyntheticBench(Path where) throws Exception {
        this(where, false);
    }

    private SyntheticBench(Path where, boolean careful) throws Exception {
        this.careful = careful;
        Files.createDirectories(where);
        try (InputStream demo = BuildFolder.class.getResourceAsStream(DEMO)) {
            String text = new String(demo.readAllBytes(), StandardCharsets.UTF_8);
            Files.writeString(where.resolve("build.yaml"), careful ? text + points() : text);
        }
        folder = BuildFolder.open(where);
        build = folder.build();
    }

    /** The demo build with a test point at every net that a pin of a device or a decoupling capacitor stands on. */
    static SyntheticBench careful(Path where) throws Exception {
        return new SyntheticBench(where, true);
    }

    private static String points() {
        StringBuilder points = new StringBuilder("\n");
        new TreeMap<>(SWINGING).forEach((name, net) -> points.append("  ")
                .append(name)
                .append(": {at: ")
                .append(net)
                .append(", probe: 10x}\n"));
        AT_REST.forEach((name, net) ->
                points.append("  ").append(name).append(": {at: ").append(net).append(", probe: meter}\n"));
        return points.toString();
    }

    /** What a builder reads who looks for a fault: besides, every pin's mean voltage and what of the carrier is there. */
    List<LogEntry> readings() {
        List<LogEntry> all = usual();
        if (!careful) return all;
        all.add(entry(What.VOLTAGE, 0.05, Optional.of("TP2"), Map.of(), Optional.empty()));
        for (String point : new TreeMap<>(SWINGING).keySet()) {
            all.add(entry(What.AMPLITUDE, 0.02, Optional.of(point), Map.of(), Optional.empty()));
            all.add(entry(What.VOLTAGE, 0.05, Optional.of(point), Map.of(), Optional.empty()));
        }
        for (String point : AT_REST.keySet()) {
            all.add(entry(What.VOLTAGE, 0.02, Optional.of(point), Map.of(), Optional.empty()));
            all.add(probed(entry(What.AMPLITUDE, 2e-3, Optional.of(point), Map.of(), Optional.empty())));
        }
        for (double stop : new double[] {0, 1})
            all.add(entry(What.AMPLITUDE, 0.08, Optional.of("TP2"), Map.of("Co", stop), Optional.empty()));
        return all;
    }

    private static LogEntry probed(LogEntry entry) {
        Circumstances c = entry.circumstances();
        Circumstances probed = new Circumstances(
                c.instrument(),
                Optional.of("10x"),
                c.set(),
                c.temperature(),
                c.supply(),
                c.audio(),
                c.added(),
                c.capture());
        return new LogEntry(
                entry.what(),
                entry.value(),
                entry.uncertainty(),
                entry.at(),
                entry.when(),
                entry.how(),
                probed,
                entry.place());
    }

    /** Scope at both points, meter, counter at both stops of the trimmer and with 10 pF across TP1. */
    private List<LogEntry> usual() {
        List<LogEntry> all = new ArrayList<>();
        for (String point : List.of("TP1", "TP2")) {
            all.add(entry(What.CARRIER, 50, Optional.of(point), Map.of(), Optional.empty()));
            all.add(entry(
                    What.AMPLITUDE, point.equals("TP1") ? 0.02 : 0.08, Optional.of(point), Map.of(), Optional.empty()));
            all.add(entry(What.SECOND_HARMONIC, 0.3, Optional.of(point), Map.of(), Optional.empty()));
        }
        all.add(entry(What.THIRD_HARMONIC, 0.3, Optional.of("TP1"), Map.of(), Optional.empty()));
        all.add(entry(What.VOLTAGE, 0.02, Optional.of("TP1"), Map.of(), Optional.empty()));
        all.add(entry(What.CURRENT, 10e-6, Optional.empty(), Map.of(), Optional.empty()));
        all.add(entry(What.CARRIER, 20, Optional.empty(), Map.of("Ct", 0.0), Optional.empty()));
        all.add(entry(What.CARRIER, 20, Optional.empty(), Map.of("Ct", 1.0), Optional.empty()));
        all.add(entry(What.CARRIER, 50, Optional.of("TP1"), Map.of(), Optional.of(10e-12)));
        return all;
    }

    private LogEntry entry(
            What what, double half, Optional<String> at, Map<String, Double> moved, Optional<Double> added) {
        Map<String, Quantity> set = new LinkedHashMap<>();
        for (String name : build.adjustments()) {
            double stands = build.part(name).orElseThrow().position().orElseThrow();
            set.put(name, Quantity.of(moved.getOrDefault(name, stands), Unit.FRACTION));
        }
        Circumstances circumstances = new Circumstances(
                Optional.empty(),
                Optional.empty(),
                set,
                Optional.of(Quantity.of(295.15, Unit.KELVIN)),
                Optional.of(Quantity.of(8.3, Unit.VOLT)),
                Optional.empty(),
                added.map(c -> Quantity.of(c, Unit.FARAD)),
                Optional.empty());
        return new LogEntry(
                what,
                Quantity.of(1, what.unit()),
                Optional.of(Quantity.of(half, what.unit())),
                at,
                Optional.empty(),
                Optional.empty(),
                circumstances,
                new Place("bench/log.yaml", 1, 1));
    }

    ReadingModel model(List<LogEntry> readings) throws Exception {
        return ReadingModel.of(
                build, readings.stream().map(r -> Asked.of(build, r)).toList(), Progress.SILENT);
    }

    double[] truth(ReadingModel model, Random random) {
        return model.latents().stream().mapToDouble(l -> random.nextGaussian()).toArray();
    }

    /** The log of a copy, as its builder writes it; empty when the copy does not oscillate under every circumstance. */
    Optional<List<LogEntry>> log(ReadingModel model, List<LogEntry> readings, double[] truth, Random random) {
        Optional<ReadingModel.Readings> exact = model.exact(truth, 0, readings.size());
        if (exact.isEmpty()) return Optional.empty();
        List<LogEntry> log = new ArrayList<>();
        for (int k = 0; k < readings.size(); k++) {
            Asked asked = model.asked().get(k);
            double modelled = exact.get().values()[k];
            LogEntry typical = with(readings.get(k), asked.shown(modelled));
            double read = modelled + Observation.of(typical, asked).sigma() * random.nextGaussian();
            log.add(with(readings.get(k), asked.shown(read)));
        }
        return Optional.of(log);
    }

    static LogEntry with(LogEntry entry, double value) {
        return new LogEntry(
                entry.what(),
                Quantity.of(value, entry.what().unit()),
                entry.uncertainty(),
                entry.at(),
                entry.when(),
                entry.how(),
                entry.circumstances(),
                entry.place());
    }

    static List<Observation> observed(ReadingModel model, List<LogEntry> log) {
        List<Observation> observed = new ArrayList<>();
        for (int k = 0; k < log.size(); k++)
            observed.add(Observation.of(log.get(k), model.asked().get(k)));
        return observed;
    }
}
