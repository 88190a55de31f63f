package galena.build.substitute;

import galena.build.attempt.Looking;
import galena.build.attempt.Tried;
import galena.build.figure.Figure;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.engine.part.Bipolar;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The transistors that work, in current gain, and in what a voltmeter shows across a collector resistor. */
final class BipolarWindow {
    private static final double BASE = 1e6, COLLECTOR = 1e3;
    private static final double SUPPLY = 9;
    private static final double FARTHEST = 12;

    private BipolarWindow() {}

    /** Empty where even the typical specimen does not work. */
    static Optional<DeviceWindow> of(Tried here, PartEntry entry, Looking looking) {
        Bipolar part = (Bipolar) here.running().circuit().part(entry.name()).orElseThrow();
        Bipolar.Model typical = part.model();
        Specimen specimen = new Specimen(here, entry, looking);
        double beta = typical.forwardBeta();
        if (!specimen.works(Specimen.text(typical, beta))) return Optional.empty();
        Figure low = Edge.find(
                beta,
                Math.max(2, beta / FARTHEST),
                b -> specimen.works(Specimen.text(typical, b)),
                Unit.NUMBER,
                "least current gain");
        Figure high = Edge.find(
                beta,
                beta * FARTHEST,
                b -> specimen.works(Specimen.text(typical, b)),
                Unit.NUMBER,
                "most current gain");
        Figure at =
                new Figure.Known(beta, Unit.NUMBER, beta, beta, "typical of the type that stands there", "typical", "");
        double least = reading(typical, Edge.value(low, Math.max(2, beta / FARTHEST)));
        double most = reading(typical, Edge.value(high, beta * FARTHEST));
        double shown = reading(typical, beta);
        boolean open = !(high instanceof Figure.Known) || most > 0.9 * SUPPLY;
        Figure.Known window = new Figure.Known(
                shown,
                Unit.VOLT,
                Math.min(least, shown),
                open ? SUPPLY : Math.max(most, shown),
                "test circuit solved",
                "volts across " + Engineering.exact(COLLECTOR, Unit.OHM),
                "");
        return Optional.of(new DeviceWindow(
                List.of(new DeviceWindow.Axis("current gain", at, low, high)),
                new DeviceWindow.Test(
                        steps(entry.kind()),
                        List.of(window),
                        "Gains at both ends were solved in the build." + (open ? " More gain does no harm." : ""))));
    }

    private static double reading(Bipolar.Model m, double beta) {
        return TestCircuit.collectorVoltage(m.withForwardBeta(beta), SUPPLY, BASE, COLLECTOR);
    }

    private static List<String> steps(PartKind kind) {
        String supply = kind == PartKind.PNP ? "−" : "+";
        return List.of(String.format(
                Locale.ROOT,
                "Emitter to 0 V, base through %s and collector through %s to %s%.0f V; read the volts across the collector's"
                        + " resistor.",
                Engineering.exact(BASE, Unit.OHM),
                Engineering.exact(COLLECTOR, Unit.OHM),
                supply,
                SUPPLY));
    }
}
