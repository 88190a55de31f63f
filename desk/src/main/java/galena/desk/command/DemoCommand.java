package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.folder.Overlay;
import galena.build.predict.Coverage;
import galena.build.predict.Predict;
import galena.build.predict.Prediction;
import galena.build.predict.Prediction.Adjustment;
import galena.build.predict.Prediction.Oscillation;
import galena.build.quantity.Quantity;
import galena.desk.console.Terminal;
import galena.desk.writing.CoverageText;
import galena.desk.writing.PredictionJson;
import galena.desk.writing.PredictionText;
import galena.engine.steady.Accuracy;
import galena.packet.Packet;
import galena.packet.chart.ChartSvg;
import galena.packet.coverage.CoverageChart;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena demo}: every step that there is, on a build that comes with Galena. */
@Command(
        name = "demo",
        description =
                "Go through the steps with a build that comes with Galena: lay it in a folder, predict it, find where"
                        + " its trimmer must stand, write its packet.")
public final class DemoCommand implements Callable<Integer> {
    private static final String RESOURCE = "/galena/demo/build.yaml";
    private static final int STEPS = 20;

    private final Terminal terminal;

    @Parameters(
            paramLabel = "DIR",
            arity = "0..1",
            description =
                    "Where the build goes: galena-demo here unless said. One that is there already is used as it is.")
    private Path folder = Path.of("galena-demo");

    @Option(names = "--brief", description = "Leave the packet out, which takes longest.")
    private boolean brief;

    public DemoCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        boolean fresh = lay();
        BuildFolder build = BuildFolder.open(folder);
        Prediction prediction;
        Optional<Coverage> coverage;
        try (Attention attention = new Attention(terminal)) {
            prediction = Predict.of(build, Overlay.NONE, Accuracy.CERTIFIED, attention);
            coverage = Optional.empty();
            Optional<String> trimmer = trimmer(prediction);
            if (trimmer.isPresent()) {
                Coverage swept =
                        Coverage.sweep(build, Overlay.NONE, trimmer.get(), STEPS, Accuracy.CERTIFIED, attention);
                if (!swept.points().isEmpty()) coverage = Optional.of(swept);
            }
        }
        Optional<Quantity> wanted = build.build().intent().carrier();
        PredictionText.printSummary(prediction, terminal);
        coverage.ifPresent(c -> CoverageText.printSummary(c, wanted, terminal));
        Path packet = Layout.PACKET.in(folder);
        write(packet.resolve("prediction.json"), PredictionJson.of(prediction));
        if (coverage.isPresent())
            write(
                    packet.resolve("cover-" + coverage.get().part() + ".svg"),
                    ChartSvg.draw(CoverageChart.of(coverage.get(), wanted)));
        if (fresh) new InventedReadings(terminal).lay(build, prediction);
        if (!brief) packet(packet);
        next();
        return PredictCommand.code(prediction, false).number();
    }

    /** Whether the build was laid, and was not there already. */
    private boolean lay() throws IOException {
        Path file = Layout.BUILD.in(folder);
        if (Files.exists(file)) {
            terminal.remark(file + " is there already and is used as it is");
            return false;
        }
        Files.createDirectories(folder);
        try (InputStream demo = DemoCommand.class.getResourceAsStream(RESOURCE)) {
            if (demo == null) throw new IllegalStateException("the jar lacks " + RESOURCE);
            Files.copy(demo, file);
        }
        terminal.remark("the demo build is in " + file);
        return true;
    }

    /** The adjustment that moves the carrier most. */
    private static Optional<String> trimmer(Prediction prediction) {
        if (!(prediction.running() instanceof Oscillation oscillation)) return Optional.empty();
        return oscillation.adjustments().stream()
                .max(Comparator.comparingDouble(a -> Math.abs(a.hertzPerPercent())))
                .map(Adjustment::part);
    }

    private void write(Path file, String text) throws IOException {
        Path parent = file.getParent();
        if (parent != null) Files.createDirectories(parent);
        Files.writeString(file, text, StandardCharsets.UTF_8);
        terminal.remark("written: " + file);
    }

    /** With the readings that lie on the bench by now. */
    private void packet(Path place) throws Exception {
        Packet written;
        try (Attention attention = new Attention(terminal)) {
            written = Packet.write(BuildFolder.open(folder), place, attention);
        }
        terminal.print("");
        terminal.print("Packet");
        terminal.print("  " + place.resolve("packet.html") + " and packet.pdf: what a friend needs to build it too");
        terminal.print("  " + (written.files().size() - 2) + " single files beside them");
    }

    private void next() {
        terminal.print("");
        terminal.print("Next: galena predict " + folder + "          everything that is predicted");
        terminal.print("      galena cover " + folder + " Ct         the trimmer from stop to stop");
        terminal.print("      galena measure " + Layout.BENCH.in(folder).resolve(InventedReadings.SHOWN));
        terminal.print("      galena reconcile " + folder + "        why the readings differ from the prediction");
        terminal.print("      galena open " + folder + "             all of it as a page: turn a trimmer, see it move");
        terminal.print("      then change a value in " + Layout.BUILD.in(folder) + " and ask again");
    }
}
