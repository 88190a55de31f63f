package galena.packet.sheet;

import galena.build.figure.Figure;
import galena.build.predict.OutputSweep;
import galena.build.predict.Prediction.Adjustment;
import galena.build.predict.Prediction.Curve;
import galena.build.predict.Prediction.Oscillation;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.spread.Drawn;
import galena.build.winding.WindingPlan;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Item;
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

    /** A tank's coil moves the carrier by half of its own change: this share of a percent's half at least. */
    private static final double TANK = 0.002;

    private final Findings findings;
    private final Oscillation oscillation;
    private final List<Item> steps = new ArrayList<>();

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
        steps.add(Item.of(
                "Set "
                        + String.join(
                                ", ",
                                findings.expected().sweeps().stream()
                                        .map(s -> s.part() + " to " + Wording.percent(s.set()))
                                        .toList())
                        + ", no programme connected.",
                "Check: the direct voltages of the first power-up lie in their windows."));
        Optional<Adjustment> main = oscillation.adjustments().stream()
                .filter(a -> Math.abs(a.hertzPerPercent()) > 0)
                .max(Comparator.comparingDouble(a -> Math.abs(a.hertzPerPercent())));
        main.ifPresent(this::carrier);
        for (OutputSweep sweep : findings.expected().sweeps())
            if (main.isEmpty() || !main.get().part().equals(sweep.part())) output(sweep);
        main.ifPresent(this::again);
        if (findings.prediction().modulation() instanceof Curve curve)
            steps.addAll(new DepthSteps(findings, curve).steps());
        supply();
        return List.of(new Steps(steps), effects());
    }

    private Optional<Figure.Known> drawn(Drawn.Quantity quantity) {
        return findings.outlook()
                .spread()
                .flatMap(s -> Optional.ofNullable(s.windows().get(quantity)));
    }

    private void carrier(Adjustment main) {
        Figure.Known carrier = oscillation.carrier();
        String up = main.hertzPerPercent() > 0 ? "up" : "down", down = main.hertzPerPercent() > 0 ? "down" : "up";
        Figure.Known window = drawn(Drawn.Quantity.AS_SET).orElse(carrier);
        steps.add(Item.of(
                "Find the carrier on a receiver with a frequency display, or couple a counter through a turn of wire beside the"
                        + " coil.",
                "Expect " + Wording.value(carrier) + ", within " + Wording.window(window) + ".",
                "If it is lower: more inductance or capacitance than reckoned; measure the coil, look for a capacitor of the"
                        + " wrong value.",
                "If it is higher: less of them; a shorted turn, an open capacitor beside the coil.",
                "If there is none: see \"When it does not work\", oscillator."));
        Optional<Quantity> wanted = findings.build().intent().carrier();
        if (wanted.isEmpty()) return;
        List<String> below = new ArrayList<>();
        below.add("One percent of travel is " + Wording.number(Math.abs(main.hertzPerPercent()), Unit.HERTZ, 2) + "."
                + where(main, wanted.get().value()));
        drawn(Drawn.Quantity.TRIM)
                .ifPresent(w -> below.add("Check: it ends between " + Wording.percent(Math.max(0, w.low())) + " and "
                        + Wording.percent(Math.min(1, w.high())) + " in 95 of 100 copies."));
        below.addAll(atStop(main, wanted.get().value()));
        steps.add(Item.of(
                "Turn " + main.part() + " until it stands on " + wanted.get().text() + ": too low, turn it " + up
                        + "; too high, " + down + ".",
                below.toArray(String[]::new)));
    }

    /** Where the trimmer will stand with typical parts, from its sweep. */
    private String where(Adjustment main, double wanted) {
        Optional<OutputSweep> sweep = sweep(main);
        if (sweep.isEmpty()) return "";
        List<OutputSweep.Point> points = sweep.get().points();
        for (int k = 1; k < points.size(); k++) {
            OutputSweep.Point a = points.get(k - 1), b = points.get(k);
            if ((a.carrier() - wanted) * (b.carrier() - wanted) > 0) continue;
            double share = (wanted - a.carrier()) / (b.carrier() - a.carrier());
            double position = a.position() + share * (b.position() - a.position());
            return " With typical parts it ends at " + Wording.percent(position) + ".";
        }
        return " With typical parts it does not reach: from "
                + Wording.number(points.get(0).carrier(), Unit.HERTZ, 4) + " to "
                + Wording.number(points.get(points.size() - 1).carrier(), Unit.HERTZ, 4) + " is what it covers.";
    }

    private Optional<OutputSweep> sweep(Adjustment main) {
        return findings.expected().sweeps().stream()
                .filter(s -> s.part().equals(main.part()))
                .findFirst();
    }

    /** What to do at a stop, and what one turn of the tank's coil brings. */
    private List<String> atStop(Adjustment main, double wanted) {
        Optional<WindingPlan> plan =
                findings.windings().stream().filter(w -> isTank(w.part())).findFirst();
        if (plan.isEmpty())
            return List.of("If it reaches a stop before that: a value beside " + main.part() + " is out of tolerance.");
        double perTurn = (plan.get().coil().oneMore() - plan.get().coil().oneLess())
                / 2
                / plan.get().coil().wanted();
        String hertz = Wording.number(wanted * perTurn / 2, Unit.HERTZ, 2);
        return List.of(
                "If it reaches a stop and the carrier is still too low: take turns off "
                        + plan.get().part() + ", each raises it by about " + hertz + ".",
                "If it is still too high there: add turns, each lowers it as much.");
    }

    /** Whether one percent of a coil's inductance moves the carrier by about half a percent, as a tank's does. */
    private boolean isTank(String coil) {
        return findings.expected().guard().stream()
                .flatMap(g -> g.parts().stream().filter(p -> p.value().equals(coil + " inductance")))
                .anyMatch(p -> Math.abs(p.perPercent().carrier())
                        > TANK * oscillation.carrier().value());
    }

    private void output(OutputSweep sweep) {
        if (sweep.points().size() < 3 || sweep.outputRange() < TUNES_OUTPUT) return;
        OutputSweep.Point best = sweep.loudest(),
                first = sweep.points().get(0),
                last = sweep.points().get(sweep.points().size() - 1);
        boolean atStop = best.position() == first.position() || best.position() == last.position();
        String weaker = Wording.percent(Math.min(first.current(), last.current()) / best.current());
        steps.add(Item.of(
                "Turn " + sweep.part() + " for the largest current in " + sweep.coil() + " (" + seenAt(sweep.coil())
                        + ").",
                "Expect it " + (atStop ? "at its stop of " : "at ") + Wording.percent(best.position())
                        + " with typical parts: " + Wording.number(best.current(), Unit.AMPERE, 3) + " peak"
                        + drawn(Drawn.Quantity.OUTPUT)
                                .map(w -> ", as set " + Wording.window(w) + " in 95 of 100 copies")
                                .orElse("")
                        + ".",
                "Check: at the weaker end of its travel it falls to " + weaker
                        + " of that; if it hardly changes, the output tank" + " is shorted or open.",
                "If the peak lies at a stop: " + sweep.coil() + " is off; change its turns or the capacitor beside it.",
                "If the level stays below its window: see \"When it does not work\", output."));
    }

    private String seenAt(String coil) {
        return findings.build()
                .part(coil)
                .flatMap(c -> findings.expected().points().stream()
                        .filter(p -> c.pins().containsValue(p.point().at()))
                        .findFirst())
                .map(p -> "seen as the largest voltage at " + p.point().name())
                .orElse("seen as the strongest signal in a receiver at a fixed place");
    }

    private void again(Adjustment main) {
        String wanted = findings.build().intent().carrier().map(Quantity::text).orElse("where it was");
        steps.add(Item.of(
                "Bring the carrier back to " + wanted + " with " + main.part() + "; the steps above moved it.",
                "Check: wait ten minutes, read it again; it should stand still within some hundreds of hertz."));
    }

    private void supply() {
        Optional<Figure.Known> drawn = drawn(Drawn.Quantity.SUPPLY);
        if (!(oscillation.supplyCurrent() instanceof Figure.Known current)) return;
        steps.add(Item.of(
                "Read the supply current once more.",
                "Expect " + Wording.value(current) + ", within " + Wording.window(drawn.orElse(current)) + ".",
                "If it is higher: a bias is off; if lower, a stage is dead. The direct voltages say which."));
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
