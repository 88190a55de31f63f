package galena.build.substitute;

import galena.build.attempt.Looking;
import galena.build.attempt.Neighbour;
import galena.build.attempt.Tried;
import galena.build.figure.Figure;
import galena.build.folder.Drawer;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.predict.Progress;
import galena.build.quantity.Engineering;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.trade.preferred.Series;
import galena.trade.preferred.TwoParts;
import galena.trade.preferred.TwoParts.Combination;
import galena.trade.preferred.TwoParts.Joined;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One part or two of the drawer in place of a value, with what they do by prediction. */
final class ValueSubstitutes {
    private static final int MOST = 8;

    /** A value in a drawer is taken to be there at least twice. */
    private static final int EACH = 2;

    private static final double TOLERANCE = 0.05;

    private final Tried here;
    private final PartEntry entry;
    private final Drawer drawer;
    private final Looking looking;
    private final Progress progress;

    ValueSubstitutes(Tried here, PartEntry entry, Drawer drawer, Looking looking, Progress progress) {
        this.progress = progress;
        this.here = here;
        this.entry = entry;
        this.drawer = drawer;
        this.looking = looking;
    }

    SubstituteReport.Values report() {
        double wanted = entry.value().orElseThrow().value();
        List<Double> held = held();
        List<String> notes = new ArrayList<>();
        if (held.isEmpty()) {
            held = Series.E12.between(wanted / 12, wanted * 12).stream()
                    .filter(v -> Math.abs(v / wanted - 1) > 1e-6)
                    .toList();
            notes.add("The drawer lists no " + entry.kind().key() + "s: values of E12 but this one were taken.");
        }
        List<TwoParts.Stock> stock =
                held.stream().map(v -> new TwoParts.Stock(v, TOLERANCE, EACH)).toList();
        List<SubstituteReport.Combination> rows = TwoParts.nearest(wanted, kind(), stock, MOST).parallelStream()
                .map(this::row)
                .toList();
        notes.addAll(Substitute.missed(here));
        notes.add("Each value of the drawer is taken to be there twice, within 5 %.");
        return new SubstituteReport.Values(
                entry.name(), entry.label(), here.standing().yield(), range(), rows, notes);
    }

    private Optional<ValueRange> range() {
        return Survey.of(here.running(), part -> part.name().equals(entry.name()), progress).values().stream()
                .findFirst();
    }

    private List<Double> held() {
        return switch (entry.kind()) {
            case RESISTOR -> values(drawer.resistors());
            case CAPACITOR -> values(drawer.capacitors());
            default ->
                values(drawer.coils().stream().map(Drawer.CoilHeld::inductance).toList());
        };
    }

    private static List<Double> values(List<Quantity> held) {
        return held.stream().map(Quantity::value).distinct().sorted().toList();
    }

    private TwoParts.Kind kind() {
        return switch (entry.kind()) {
            case RESISTOR -> TwoParts.Kind.RESISTANCE;
            case CAPACITOR -> TwoParts.Kind.CAPACITANCE;
            default -> TwoParts.Kind.INDUCTANCE;
        };
    }

    private Unit unit() {
        return entry.kind() == PartKind.RESISTOR
                ? Unit.OHM
                : entry.kind() == PartKind.CAPACITOR ? Unit.FARAD : Unit.HENRY;
    }

    private SubstituteReport.Combination row(Combination c) {
        String text = Engineering.print(c.value(), unit(), 4);
        Figure value = new Figure.Known(
                c.value(),
                unit(),
                c.value() * (1 - c.tolerance()),
                c.value() * (1 + c.tolerance()),
                "both parts within 5 %",
                entry.kind().key(),
                entry.name());
        Neighbour neighbour = Candidates.with(here.build(), Map.of(Candidates.key(entry), text))
                .map(with -> looking.look(with, here.running())
                        .map(t -> Neighbour.of(text, here, looking.beside(here, t)))
                        .orElse(Neighbour.silent(text)))
                .orElse(new Neighbour(text, "lies outside what the part may be", 0));
        return new SubstituteReport.Combination(words(c), value, c.error(), neighbour.effects(), neighbour.yield());
    }

    private String words(Combination c) {
        String first = Engineering.exact(c.first().value(), unit());
        if (c.joined() == Joined.ALONE) return first + " alone";
        return first + " and " + Engineering.exact(c.second().value(), unit())
                + (c.joined() == Joined.SERIES ? " in series" : " in parallel");
    }
}
