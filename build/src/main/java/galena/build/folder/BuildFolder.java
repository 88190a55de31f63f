package galena.build.folder;

import galena.build.form.Filled;
import galena.build.form.Form;
import galena.build.form.Notes;
import galena.build.quantity.Quantity;
import galena.build.source.BadInputException;
import galena.build.source.Edit;
import galena.build.source.Editor;
import galena.build.source.FileVersion;
import galena.build.source.Nearest;
import galena.build.source.Node.Mapping;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.build.source.Problems;
import galena.build.source.Saver;
import galena.build.source.SourceFile;
import galena.build.source.YamlReader;
import galena.trade.device.DeviceLibrary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/**
 * A build folder as it stood when it was opened. Everything but {@code build.yaml} may be missing.
 *
 * @param folder where it is
 * @param build the build
 * @param drawer the builder's parts; empty if there is no drawer
 * @param stations heard
 * @param log readings
 * @param calibration accepted, if any
 */
public record BuildFolder(
        Path folder,
        Build build,
        Drawer drawer,
        List<Station> stations,
        List<LogEntry> log,
        Optional<Calibration> calibration) {
    public BuildFolder {
        stations = List.copyOf(stations);
        log = List.copyOf(log);
    }

    /**
     * Opens a folder, or the folder of a {@code build.yaml}.
     *
     * @throws BadInputException with every problem in every file
     * @throws IOException if the disk fails
     */
    public static BuildFolder open(Path path) throws BadInputException, IOException {
        Path folder =
                Files.isRegularFile(path) ? path.toAbsolutePath().normalize().getParent() : path;
        if (folder == null || !Files.exists(folder)) throw notThere(path);
        Problems problems = new Problems();
        Optional<Build> build = build(folder, problems);
        Optional<Filled> drawer = optional(folder, Layout.DRAWER, Drawer.FORM, problems);
        Optional<Filled> stations = optional(folder, Layout.STATIONS, Station.FORM, problems);
        Optional<Filled> log = optional(folder, Layout.LOG, LogEntry.FORM, problems);
        Optional<Filled> calibration = optional(folder, Layout.CALIBRATION, Calibration.FORM, problems);
        build.ifPresent(b -> {
            log.ifPresent(l -> points(l, b, problems));
            calibration.ifPresent(c -> names(c, b.parts().keySet(), problems));
        });
        problems.throwIfAny();
        return new BuildFolder(
                folder,
                build.orElseThrow(),
                drawer.map(Drawer::of).orElse(Drawer.EMPTY),
                stations.map(Station::of).orElse(List.of()),
                log.map(LogEntry::of).orElse(List.of()),
                calibration.map(Calibration::of));
    }

    /**
     * Makes one edit in {@code build.yaml} and writes it, then opens the folder again.
     *
     * @throws BadInputException if the edit can't be made, would make the build unreadable, or the file changed on disk;
     *     nothing is written then
     */
    public BuildFolder edit(Edit edit) throws BadInputException, IOException {
        SourceFile changed = Editor.apply(build.file(), edit);
        BuildReader.read(changed, build.name(), build.devices());
        Saver.save(build.file(), changed);
        return open(folder);
    }

    /**
     * Adds readings behind those of the bench log, which is begun if there is none, and opens the folder again. What stands in
     * the log stays byte for byte.
     *
     * @throws BadInputException if a reading doesn't fit the build, or the log changed on disk; nothing is written then
     */
    public BuildFolder note(List<LogEntry> readings) throws BadInputException, IOException {
        BenchLog.add(folder, build, readings);
        return open(folder);
    }

    /**
     * Writes a calibration that the builder accepts, in place of one that is there, which is kept beside it.
     *
     * @param remarks written above it, a line each
     * @throws BadInputException if the file changed on disk meanwhile
     */
    public BuildFolder accept(Calibration accepted, List<String> remarks) throws BadInputException, IOException {
        CalibrationFile.accept(folder, accepted, remarks);
        return open(folder);
    }

    /**
     * Takes an accepted calibration away; it is kept beside its place.
     *
     * @return whether there was one
     */
    public boolean dropCalibration() throws IOException {
        return CalibrationFile.drop(folder);
    }

    /** The problems that readings have with a build. */
    static void check(Filled log, Build build) throws BadInputException {
        Problems problems = new Problems();
        points(log, build, problems);
        problems.throwIfAny();
    }

    /**
     * The drawer alone, of a folder whose build may not be written yet; empty if there is none.
     *
     * @throws BadInputException with every problem in it
     * @throws IOException if the disk fails
     */
    public static Drawer drawer(Path folder) throws BadInputException, IOException {
        Problems problems = new Problems();
        Optional<Filled> drawer = optional(folder, Layout.DRAWER, Drawer.FORM, problems);
        problems.throwIfAny();
        return drawer.map(Drawer::of).orElse(Drawer.EMPTY);
    }

    private static BadInputException notThere(Path path) {
        Place place = new Place(path.toString(), 1, 1);
        return new BadInputException(new Problem(
                place,
                "",
                "there is no such folder",
                "A build is a folder with a build.yaml.",
                "Look for a slip in the path."));
    }

    private static Optional<Build> build(Path folder, Problems problems) throws IOException {
        try {
            SourceFile file = SourceFile.read(Layout.BUILD.in(folder), Layout.BUILD.place());
            Path name = folder.toAbsolutePath().normalize().getFileName();
            return Optional.of(
                    BuildReader.read(file, name == null ? "build" : name.toString(), DeviceLibrary.standard()));
        } catch (BadInputException bad) {
            problems.addAll(bad.problems());
            return Optional.empty();
        }
    }

    private static Optional<Filled> optional(Path folder, Layout layout, Form form, Problems problems)
            throws IOException {
        if (!Files.exists(layout.in(folder))) return Optional.empty();
        try {
            Problems own = new Problems();
            SourceFile file = FileVersion.migrated(SourceFile.read(layout.in(folder), layout.place()), own);
            Mapping top = YamlReader.read(file, own);
            Optional<Filled> filled = form.read(top, new Notes(own, "This is " + form.name() + "."));
            problems.addAll(own.sorted());
            return filled;
        } catch (BadInputException bad) {
            problems.addAll(bad.problems());
            return Optional.empty();
        }
    }

    private static void points(Filled log, Build build, Problems problems) {
        for (Filled reading : log.list("readings", Filled.class)) {
            for (String name : reading.quantities("set").keySet())
                if (!build.adjustments().contains(name))
                    problems.add(unknown(
                            reading.place("set"), reading.path("set"), "adjustment", name, build.adjustments()));
            reading.text("at")
                    .filter(at -> !build.points().containsKey(at))
                    .ifPresent(at -> problems.add(unknown(
                            reading.place("at"),
                            reading.path("at"),
                            "test point",
                            at,
                            build.points().keySet())));
        }
    }

    private static void names(Filled calibration, Collection<String> parts, Problems problems) {
        calibration.named("parts").forEach((name, part) -> check(part.place(), part.path(), name, parts, problems));
        for (Filled coupling : calibration.list("couplings", Filled.class))
            for (String coil : coupling.list("between", String.class))
                check(coupling.place("between"), coupling.path("between"), coil, parts, problems);
        int row = 0;
        for (Filled known : calibration.list("unknowns", Filled.class)) {
            int due = ++row, has = known.list("spread", Quantity.class).size();
            if (has == due) continue;
            problems.add(new Problem(
                    known.place("spread"),
                    known.path("spread"),
                    "row " + due + " has " + has + " spreads",
                    "Each row of the triangle is one number longer than the row before, the first has one.",
                    "Let galena reconcile --accept write it anew."));
        }
    }

    private static void check(Place place, String path, String name, Collection<String> parts, Problems problems) {
        if (!parts.contains(name)) problems.add(unknown(place, path, "part", name, parts));
    }

    private static Problem unknown(Place place, String path, String what, String name, Collection<String> known) {
        String all = known.isEmpty() ? "The build has none." : "The build has " + String.join(", ", known) + ".";
        return new Problem(
                place,
                path,
                "the build has no " + what + " \"" + name + "\"",
                all,
                Nearest.to(name, known).map(n -> "Nearest: " + n));
    }
}
