package galena.desk.command;

import galena.bench.measure.AddedCapacitor;
import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import galena.desk.console.Terminal;
import galena.desk.writing.Sum;
import galena.signal.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Coil and strays from two frequencies. */
@Command(
        name = "added-capacitor",
        description =
                "The true coil and everything across it, from its frequency bare and with a known capacitor added.")
final class AddedCapacitorSum extends Answering {
    @Option(names = "--bare", required = true, paramLabel = "FREQUENCY", description = "Without the added capacitor.")
    private String bare = "";

    @Option(names = "--loaded", required = true, paramLabel = "FREQUENCY", description = "With it.")
    private String loaded = "";

    @Option(
            names = "--added",
            required = true,
            paramLabel = "CAPACITANCE",
            description = "The capacitor, with its tolerance: it limits the answer.")
    private String added = "";

    @Option(
            names = "--fitted",
            paramLabel = "CAPACITANCE",
            description = "What is fitted across the coil anyway: the rest is strays.")
    private Optional<String> fitted = Optional.empty();

    AddedCapacitorSum(Terminal terminal) {
        super(terminal);
    }

    @Override
    Sum answer() throws Exception {
        Estimate f = reading("--bare", bare, Unit.HERTZ), g = reading("--loaded", loaded, Unit.HERTZ);
        Estimate c = reading("--added", added, Unit.FARAD);
        AddedCapacitor found = checked("--loaded", () -> AddedCapacitor.of(f, g, c));
        List<Figure> figures = new ArrayList<>();
        figures.add(figure("coil", found.inductance(), Unit.HENRY));
        figures.add(figure("capacitance across it", found.capacitance(), Unit.FARAD));
        if (fitted.isPresent()) {
            Estimate there = reading("--fitted", fitted.get(), Unit.FARAD);
            figures.add(figure("of that strays", found.stray(there), Unit.FARAD));
        }
        return new Sum("Coil and capacitance from two frequencies", figures, assumed);
    }
}
