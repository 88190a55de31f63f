package galena.build.substitute;

import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.predict.Running;
import galena.build.quantity.Quantity;
import galena.build.spread.Drawn;
import galena.build.spread.Judge;
import galena.build.substitute.ValueRange.Pair;
import galena.build.substitute.ValueRange.Step;
import galena.engine.circuit.Circuit;
import galena.engine.part.Capacitor;
import galena.engine.part.Part;
import galena.engine.part.Resistor;
import galena.trade.preferred.Series;
import galena.trade.preferred.TwoParts;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Tries other values of one resistor or capacitor. Immutable; many threads share it. */
final class Values {
    /** After the next value of E12: further out in steps that a drawer of a few values has. */
    private static final double[] FURTHER = {2.2, 4.7};

    /** Values in a pair span at most this ratio: more is a trimmer's business. */
    private static final double PAIR_SPAN = 30;

    private final Running typical;
    private final Judge judge;
    private final Drawn own;
    private final AudioPath audio;

    Values(Running typical, Judge judge, Drawn own) {
        this.typical = typical;
        this.judge = judge;
        this.own = own;
        this.audio = new AudioPath(typical);
    }

    static boolean isAsked(PartEntry entry) {
        return (entry.kind() == PartKind.RESISTOR || entry.kind() == PartKind.CAPACITOR)
                && entry.value().isPresent();
    }

    ValueRange of(PartEntry entry) {
        Quantity value = entry.value().orElseThrow();
        List<Step> nearest = new ArrayList<>();
        double low = walk(entry, value.value(), false, nearest), high = walk(entry, value.value(), true, nearest);
        return new ValueRange(
                entry.name(), value.value(), value.unit(), low, high, nearest, pair(entry, value.value()));
    }

    /** As far as the intent is kept without a gap. */
    private double walk(PartEntry entry, double value, boolean up, List<Step> nearest) {
        double reached = value;
        double next = up ? Series.E12.atLeast(value * 1.01) : Series.E12.atMost(value / 1.01);
        Optional<Step> first = step(entry, value, next);
        first.ifPresent(nearest::add);
        if (first.isEmpty() || !first.get().fits()) return reached;
        reached = next;
        for (double factor : FURTHER) {
            double further = Series.E12.nearest(up ? value * factor : value / factor);
            Optional<Step> step = step(entry, value, further);
            if (step.isEmpty() || !step.get().fits()) break;
            reached = further;
        }
        return reached;
    }

    private Optional<Step> step(PartEntry entry, double value, double other) {
        Part part = typical.circuit().part(entry.name()).orElseThrow();
        Part changed = part instanceof Resistor r ? r.scaled(other / value) : ((Capacitor) part).scaled(other / value);
        Circuit circuit = typical.circuit().with(changed);
        return judge.judge(circuit).map(drawn -> new Step(other, drawn, failures(circuit, drawn)));
    }

    private List<String> failures(Circuit circuit, Drawn drawn) {
        List<String> failures = Changes.beyond(own, drawn);
        if (!audio.keeps(circuit)) failures.add("the audio band narrows");
        return failures;
    }

    /** From the values that every drawer has: E12 of resistors, E6 of capacitors. */
    private static Optional<Pair> pair(PartEntry entry, double value) {
        boolean resistor = entry.kind() == PartKind.RESISTOR;
        Series usual = resistor ? Series.E12 : Series.E6;
        if (usual.contains(value)) return Optional.empty();
        List<TwoParts.Stock> stock = usual.between(value / PAIR_SPAN, value * PAIR_SPAN).stream()
                .map(v -> new TwoParts.Stock(v, usual.customaryTolerance(), 2))
                .toList();
        TwoParts.Kind kind = resistor ? TwoParts.Kind.RESISTANCE : TwoParts.Kind.CAPACITANCE;
        return TwoParts.nearest(value, kind, stock, 1).stream()
                .filter(c -> c.joined() != TwoParts.Joined.ALONE)
                .map(c -> new Pair(
                        c.first().value(), c.second().value(), c.joined() == TwoParts.Joined.PARALLEL, c.error()))
                .findFirst();
    }
}
