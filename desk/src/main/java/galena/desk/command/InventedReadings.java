package galena.desk.command;

import galena.bench.invented.InventedBench;
import galena.bench.log.Beside;
import galena.bench.measure.Report;
import galena.bench.reconcile.Reconcile;
import galena.bench.reconcile.Reconciliation;
import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.predict.Prediction;
import galena.desk.console.Terminal;
import galena.desk.writing.BesideText;
import galena.desk.writing.ReconcileText;
import java.util.List;

/** The demo's bench: lays what is invented, measures it, and shows it beside the prediction. */
final class InventedReadings {
    /** A capture worth looking at. */
    static final String SHOWN = InventedBench.TONE;

    private final Terminal terminal;

    InventedReadings(Terminal terminal) {
        this.terminal = terminal;
    }

    void lay(BuildFolder build, Prediction prediction) throws Exception {
        List<Report> reports;
        List<Beside> beside;
        try (Attention attention = new Attention(terminal)) {
            reports = InventedBench.lay(build, attention);
            beside = Beside.of(BuildFolder.open(build.folder()), prediction, attention);
        }
        BesideText.print("Measured (invented captures and readings)", reports, beside, terminal);
        Reconciliation found;
        try (Attention attention = new Attention(terminal)) {
            found = Reconcile.of(BuildFolder.open(build.folder()), InventedBench.DAY, attention);
        }
        ReconcileText.printSummary(found, terminal);
        terminal.remark("written: " + Layout.LOG.in(build.folder()) + " and three invented captures beside it");
    }
}
