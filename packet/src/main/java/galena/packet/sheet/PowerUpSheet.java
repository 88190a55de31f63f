package galena.packet.sheet;

import galena.build.figure.Figure;
import galena.build.folder.PartEntry;
import galena.build.predict.Prediction.Oscillation;
import galena.build.quantity.Unit;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Section;
import galena.packet.page.Page.Steps;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The first minutes: current limit, then direct voltages from the supply outwards, before any carrier is looked for. */
final class PowerUpSheet {
    /** A limit of three times the most that tolerances allow trips on a slip and not on a spread (common practice). */
    private static final double LIMIT = 3;

    private PowerUpSheet() {}

    static Optional<Section> of(Findings findings) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(Steps.of(steps(findings)));
        List<List<String>> rows = rows(findings);
        if (!rows.isEmpty())
            blocks.add(new Grid(
                    "Direct voltages against ground, highest first. At rest: oscillator stopped, for example by a short across its"
                            + " coil. Oscillating: the mean that a meter shows through a resistor of 100 kΩ at its tip; "
                            + ExpectedVoltages.basis(findings) + ".",
                    List.of("Net", "Touch it at", "At rest", "Window", "Oscillating", "Window"),
                    rows));
        return Optional.of(new Section("power-up", "First power-up", blocks));
    }

    private static List<String> steps(Findings findings) {
        List<String> steps = new ArrayList<>();
        steps.add("Look over every joint against the schematic; check the supply's polarity with a meter.");
        Optional<Oscillation> oscillation = findings.oscillation();
        if (oscillation.isPresent() && oscillation.get().supplyCurrent() instanceof Figure.Known current) {
            steps.add("Set the current limit to " + Wording.number(LIMIT * current.high(), Unit.AMPERE, 2)
                    + ", or put a resistor in series that drops a volt or two at that current.");
            steps.add(
                    "Switch on and read the current: expect " + Wording.both(current)
                            + ". Far above it: switch off and look for a short or a reversed part. Near zero: look for an open rail.");
        }
        steps.add(
                "Read the direct voltages below, from the top down. The first one outside its window names the stage to look at.");
        if (oscillation.isPresent()) steps.add("Only when they fit, look for the carrier.");
        return steps;
    }

    private static List<List<String>> rows(Findings findings) {
        List<Figure> means = ExpectedVoltages.running(findings);
        List<Figure.Known> rest = new ArrayList<>();
        for (Figure f : findings.prediction().rest().voltages()) if (f instanceof Figure.Known k) rest.add(k);
        rest.sort((a, b) -> Double.compare(Math.abs(b.value()), Math.abs(a.value())));
        List<List<String>> rows = new ArrayList<>();
        for (Figure.Known k : rest) {
            Optional<Figure> mean = means.stream()
                    .filter(f -> f instanceof Figure.Known m && m.at().equals(k.at()))
                    .findFirst();
            rows.add(List.of(
                    k.at(),
                    places(findings, k.at()),
                    Wording.value(k),
                    Wording.window(k),
                    mean.map(Wording::value).orElse("—"),
                    mean.map(Wording::window).orElse("—")));
        }
        return rows;
    }

    /** Two or three pins on a net, a device's first: "Q1 source, Rs, Cs". */
    private static String places(Findings findings, String net) {
        List<String> devices = new ArrayList<>(), others = new ArrayList<>();
        for (PartEntry part : findings.build().parts().values())
            part.pins().forEach((pin, at) -> {
                if (!at.equals(net)) return;
                boolean device = part.pins().size() >= 3 || (!pin.equals("from") && !pin.equals("to"));
                (device ? devices : others).add(device ? part.name() + " " + pin : part.name());
            });
        List<String> all = new ArrayList<>(devices);
        others.stream().distinct().forEach(all::add);
        return String.join(", ", all.subList(0, Math.min(3, all.size())));
    }
}
