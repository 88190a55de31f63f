package galena.packet.sheet;

import galena.build.figure.Figure;
import galena.build.folder.PartKind;
import galena.build.predict.OutputSweep;
import galena.build.predict.PointReading;
import galena.build.predict.Prediction.Adjustment;
import galena.build.predict.Prediction.Curve;
import galena.build.predict.Prediction.Oscillation;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Section;
import galena.packet.page.Page.Steps;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The order of adjustment, each step with the reading to expect, its window, and which way to turn. */
final class AlignmentSheet {
    /** An adjustment that changes the output by less than this share is not tuned by it. */
    private static final double TUNES_OUTPUT = 0.05;

    private final Findings findings;
    private final Oscillation oscillation;
    private final List<String> steps = new ArrayList<>();

    private AlignmentSheet(Findings findings, Oscillation oscillation) {
        this.findings = findings;
        this.oscillation = oscillation;
    }

    static Optional<Section> of(Findings findings) {
        if (findings.oscillation().isEmpty() || findings.expected().sweeps().isEmpty()) return Optional.empty();
        AlignmentSheet sheet =
                new AlignmentSheet(findings, findings.oscillation().get());
        List<Block> blocks = sheet.blocks();
        return Optional.of(new Section("alignment", "Alignment", blocks));
    }

    private List<Block> blocks() {
        steps.add("Set "
                + String.join(
                        ", ",
                        findings.expected().sweeps().stream()
                                .map(s -> s.part() + " to " + Wording.percent(s.set()))
                                .toList())
                + ", no programme connected.");
        Optional<Adjustment> main = oscillation.adjustments().stream()
                .filter(a -> Math.abs(a.hertzPerPercent()) > 0)
                .max(Comparator.comparingDouble(a -> Math.abs(a.hertzPerPercent())));
        main.ifPresent(this::carrier);
        for (OutputSweep sweep : findings.expected().sweeps())
            if (main.isEmpty() || !main.get().part().equals(sweep.part())) output(sweep);
        main.ifPresent(m -> steps.add("Bring the carrier back with " + m.part() + "; the steps above moved it."));
        modulation();
        if (oscillation.supplyCurrent() instanceof Figure.Known current)
            steps.add("Read the supply current once more: " + Wording.both(current) + ".");
        return List.of(new Steps(steps), effects());
    }

    private void carrier(Adjustment main) {
        Figure.Known carrier = oscillation.carrier();
        String up = main.hertzPerPercent() > 0 ? "up" : "down", down = main.hertzPerPercent() > 0 ? "down" : "up";
        String listen =
                "Find the carrier on a receiver with a frequency display, or couple a counter through a turn of wire"
                        + " beside the coil. As set, expect " + Wording.both(carrier) + ".";
        steps.add(listen);
        Optional<Quantity> wanted = findings.build().intent().carrier();
        if (wanted.isEmpty()) return;
        String turn =
                "Turn " + main.part() + " until it stands on " + wanted.get().text() + ": too low, turn it " + up
                        + "; too high, " + down + ". One percent of travel is "
                        + Wording.number(Math.abs(main.hertzPerPercent()), Unit.HERTZ, 2) + ".";
        steps.add(turn + where(main, wanted.get().value()));
    }

    /** Where the trimmer will stand, from its sweep; with the worst of the window, from its slope. */
    private String where(Adjustment main, double wanted) {
        Optional<OutputSweep> sweep = findings.expected().sweeps().stream()
                .filter(s -> s.part().equals(main.part()))
                .findFirst();
        if (sweep.isEmpty()) return "";
        List<OutputSweep.Point> points = sweep.get().points();
        for (int k = 1; k < points.size(); k++) {
            OutputSweep.Point a = points.get(k - 1), b = points.get(k);
            if ((a.carrier() - wanted) * (b.carrier() - wanted) > 0) continue;
            double share = (wanted - a.carrier()) / (b.carrier() - a.carrier());
            double position = a.position() + share * (b.position() - a.position());
            return " With typical parts it ends at " + Wording.percent(position)
                    + "; at a stop before that, the coil or the fixed capacitor beside it is out of tolerance.";
        }
        return " With typical parts it does not reach: from "
                + Wording.number(points.get(0).carrier(), Unit.HERTZ, 4) + " to "
                + Wording.number(points.get(points.size() - 1).carrier(), Unit.HERTZ, 4) + " is what it covers.";
    }

    private void output(OutputSweep sweep) {
        if (sweep.points().size() < 3 || sweep.outputRange() < TUNES_OUTPUT) return;
        OutputSweep.Point best = sweep.loudest(),
                first = sweep.points().get(0),
                last = sweep.points().get(sweep.points().size() - 1);
        boolean atStop = best.position() == first.position() || best.position() == last.position();
        String weaker = Wording.percent(Math.min(first.current(), last.current()) / best.current());
        String place = atStop
                ? "with typical parts the largest lies at its stop of " + Wording.percent(best.position())
                : "with typical parts it lies at " + Wording.percent(best.position());
        steps.add("Turn " + sweep.part() + " for the largest current in " + sweep.coil() + " (" + seenAt(sweep.coil())
                + "): "
                + place + ", " + Wording.number(best.current(), Unit.AMPERE, 3)
                + " peak; at the weaker end of its travel "
                + weaker + " of that. A peak at a stop of the real trimmer says that " + sweep.coil()
                + " is off: change its turns or the capacitor beside it.");
    }

    private String seenAt(String coil) {
        return findings.build()
                .part(coil)
                .flatMap(c -> findings.expected().points().stream()
                        .filter(p -> c.pins().containsValue(p.point().at()))
                        .map(PointReading::point)
                        .findFirst())
                .map(p -> "seen as the largest voltage at " + p.name())
                .orElse("seen as the strongest signal in a receiver at a fixed place");
    }

    private void modulation() {
        if (!(findings.prediction().modulation() instanceof Curve curve)) return;
        if (!(curve.negativePeak() instanceof Figure.Known negative)
                || !(curve.positivePeak() instanceof Figure.Known positive)) return;
        String presets = String.join(
                " and ",
                findings.build().adjustments().stream()
                        .filter(a -> findings.build().part(a).orElseThrow().kind() == PartKind.PRESET)
                        .toList());
        String set = presets.isEmpty() ? "" : "; " + presets + " sets it";
        steps.add("Feed " + Wording.number(curve.level(), Unit.VOLT, 3) + " peak at 1 kHz into " + curve.source()
                + ". Expect a positive peak of " + Wording.value(positive) + " and a negative peak of "
                + Wording.value(negative) + " on the " + curve.quantity() + set + "."
                + wantedDepth(negative));
    }

    private String wantedDepth(Figure.Known negative) {
        return findings.build()
                .intent()
                .modulation()
                .map(m -> negative.value() > m.value()
                        ? " That is deeper than the " + m.text()
                                + " wanted: turn the level down until the negative peak reads it."
                        : negative.value() < m.value()
                                ? " That is less than the " + m.text()
                                        + " wanted: raise the level until the negative peak reads it."
                                : "")
                .orElse("");
    }

    private Grid effects() {
        List<List<String>> rows = new ArrayList<>();
        for (OutputSweep sweep : findings.expected().sweeps()) {
            if (sweep.points().isEmpty()) continue;
            double slope = oscillation.adjustments().stream()
                    .filter(a -> a.part().equals(sweep.part()))
                    .mapToDouble(Adjustment::hertzPerPercent)
                    .findFirst()
                    .orElse(0);
            rows.add(List.of(
                    sweep.part(),
                    Wording.percent(sweep.set()),
                    Wording.number(slope, Unit.HERTZ, 2),
                    Wording.number(sweep.carrierRange(), Unit.HERTZ, 3),
                    Wording.percent(sweep.outputRange())));
        }
        return new Grid(
                "Which adjustment moves what, typical parts, from stop to stop.",
                List.of(
                        "Adjustment",
                        "Set",
                        "Carrier per % of travel",
                        "Carrier, whole travel",
                        "Output current, whole travel"),
                rows);
    }
}
