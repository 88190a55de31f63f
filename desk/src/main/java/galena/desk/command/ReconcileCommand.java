package galena.desk.command;

import galena.bench.reconcile.Reconcile;
import galena.bench.reconcile.Reconciliation;
import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.ReconcileJson;
import galena.desk.writing.ReconcileText;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena reconcile DIR}: why a build differs from its prediction. */
@Command(
        name = "reconcile",
        description =
                "Explain all readings of the bench log at once: strays, part and device values with what is left open of"
                        + " them, a reading or a part that is wrong, and the reading worth taking next.")
public final class ReconcileCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Clock clock;

    @Parameters(paramLabel = "DIR", description = "The build's folder, or its build.yaml.")
    private Path folder = Path.of("");

    @Option(
            names = "--accept",
            description = "Write what was found into calibration.yaml: every prediction then rests on it and says so.")
    private boolean accept;

    @Option(
            names = "--drop",
            description = "Take an accepted calibration away, and do nothing else. It is kept beside its place.")
    private boolean drop;

    @Option(names = "--all", description = "Show every unknown, also those of which nothing new is known.")
    private boolean all;

    @Option(names = "--json", description = "Print everything as JSON instead of a page.")
    private boolean json;

    public ReconcileCommand(Terminal terminal, Clock clock) {
        this.terminal = terminal;
        this.clock = clock;
    }

    @Override
    public Integer call() throws Exception {
        if (accept && drop)
            throw Written.bad("--drop", "--accept and --drop at once", "A calibration is accepted or dropped.");
        BuildFolder build = BuildFolder.open(folder);
        if (drop) return dropped(build);
        Reconciliation found;
        try (Attention attention = new Attention(terminal)) {
            found = Reconcile.of(build, LocalDate.now(clock).toString(), attention);
        }
        if (json) terminal.printDocument(ReconcileJson.of(found));
        else ReconcileText.print(found, all, terminal);
        if (accept) return accepted(build, found);
        if (found.verdict() == Reconciliation.Verdict.TOO_FEW || found.verdict() == Reconciliation.Verdict.UNEXPLAINED)
            return ExitCode.NO_ANSWER.number();
        return ExitCode.DONE.number();
    }

    private int dropped(BuildFolder build) throws Exception {
        boolean was = build.dropCalibration();
        terminal.remark(
                was
                        ? "dropped: " + Layout.CALIBRATION.in(build.folder()) + "; it is kept beside its place"
                        : "there is no calibration to drop");
        return was ? ExitCode.DONE.number() : ExitCode.NO_ANSWER.number();
    }

    private int accepted(BuildFolder build, Reconciliation found) throws Exception {
        if (found.calibration().isEmpty()) {
            terminal.remark("nothing is accepted: the readings are not explained by a sound build");
            return ExitCode.NO_ANSWER.number();
        }
        List<String> remarks = new ArrayList<>();
        remarks.add("Accepted by galena reconcile: what the readings of bench/log.yaml say of the build's unknowns.");
        remarks.addAll(ReconcileText.lines(found));
        build.accept(found.calibration().get(), remarks);
        terminal.remark(
                "written: " + Layout.CALIBRATION.in(build.folder()) + "; galena reconcile --drop takes it away");
        return ExitCode.DONE.number();
    }
}
