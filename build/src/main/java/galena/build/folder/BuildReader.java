package galena.build.folder;

import galena.build.form.Filled;
import galena.build.form.Notes;
import galena.build.source.BadInputException;
import galena.build.source.FileVersion;
import galena.build.source.Node.Mapping;
import galena.build.source.Problems;
import galena.build.source.SourceFile;
import galena.build.source.YamlReader;
import galena.trade.device.DeviceLibrary;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads {@code build.yaml}: text to tree, tree through the form, and the checks that join one part of it to another. */
public final class BuildReader {
    private BuildReader() {}

    /**
     * @param file the text of a build
     * @param folderName the name of a build that has none
     * @param devices where type numbers are looked up
     * @throws BadInputException with every problem that was found
     */
    public static Build read(SourceFile file, String folderName, DeviceLibrary devices) throws BadInputException {
        Problems problems = new Problems();
        SourceFile current = FileVersion.migrated(file, problems);
        Mapping top = YamlReader.read(current, problems);
        Optional<Filled> filled = BuildForm.BUILD.read(top, new Notes(problems, "A build has parts."));
        BuildChecks.check(top, problems);
        TradeChecks.check(top, devices, problems);
        problems.throwIfAny();
        return build(file, top, filled.orElseThrow(), folderName, devices);
    }

    private static Build build(SourceFile file, Mapping top, Filled filled, String folderName, DeviceLibrary devices) {
        return new Build(
                file,
                top,
                filled.text("name").orElse(folderName),
                intent(filled),
                filled.group("supply").map(BuildReader::supply),
                parts(filled),
                strays(filled),
                couplings(filled),
                points(filled),
                devices);
    }

    private static Intent intent(Filled top) {
        Optional<Filled> intent = top.group("intent");
        Optional<Intent.Programme> programme = intent.flatMap(i -> i.group("programme"))
                .map(p -> new Intent.Programme(
                        p.quantity("level").orElseThrow(), p.range("band").orElseThrow()));
        return new Intent(
                intent.flatMap(i -> i.quantity("carrier")),
                intent.flatMap(i -> i.text("rules")),
                intent.flatMap(i -> i.quantity("distance")),
                intent.flatMap(i -> i.quantity("modulation")),
                programme,
                intent.flatMap(i -> i.quantity("runtime")),
                intent.flatMap(i -> i.quantity("harmonics")),
                intent.flatMap(i -> i.quantity("raster")));
    }

    private static Supply supply(Filled filled) {
        String plus = filled.text("plus").orElse(BuildForm.RAIL);
        String minus = filled.text("minus").orElse(BuildForm.GROUND);
        Optional<String> battery = filled.text("battery");
        if (battery.isPresent())
            return new Supply.OfBattery(battery.get(), filled.si("charge", 1), plus, minus, filled.place());
        return new Supply.OfVoltage(
                filled.quantity("voltage").orElseThrow(),
                filled.quantity("resistance").orElseThrow(),
                filled.quantity("capacity"),
                filled.group("ripple")
                        .map(r -> new Supply.Ripple(
                                r.quantity("mains").orElseThrow(), r.quantity("once"), r.quantity("twice"))),
                plus,
                minus,
                filled.place());
    }

    private static Map<String, PartEntry> parts(Filled top) {
        Map<String, PartEntry> parts = new LinkedHashMap<>();
        top.named("parts").forEach((name, values) -> {
            PartKind kind = PartKind.of(values.form().keys().get(0));
            parts.put(name, new PartEntry(name, kind, values));
        });
        return parts;
    }

    static List<Stray> strays(Filled top) {
        return top.list("strays", Filled.class).stream()
                .map(s -> new Stray(
                        s.text("from").orElseThrow(),
                        s.text("to").orElseThrow(),
                        s.quantity("capacitance").orElseThrow()))
                .toList();
    }

    static List<Coupled> couplings(Filled top) {
        return top.list("couplings", Filled.class).stream()
                .map(c -> {
                    List<String> coils = c.list("between", String.class);
                    return new Coupled(
                            coils.get(0), coils.get(1), c.quantity("k").orElseThrow());
                })
                .toList();
    }

    private static Map<String, TestPoint> points(Filled top) {
        Map<String, TestPoint> points = new LinkedHashMap<>();
        top.named("points")
                .forEach((name, point) -> points.put(
                        name,
                        new TestPoint(
                                name,
                                point.text("at").orElseThrow(),
                                point.text("to").orElse(BuildForm.GROUND),
                                probe(point))));
        return points;
    }

    private static Optional<Probe> probe(Filled point) {
        return point.text("probe").map(Probe::named).or(() -> point.group("probe")
                .map(p -> new Probe("own", p.si("resistance"), p.si("capacitance"))));
    }
}
