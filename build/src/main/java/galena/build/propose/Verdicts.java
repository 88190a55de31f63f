package galena.build.propose;

import galena.build.attempt.Aim;
import galena.build.attempt.Line;
import galena.build.attempt.Tried;
import galena.build.figure.Figure;
import galena.build.folder.Intent;
import galena.build.folder.PartEntry;
import galena.build.quantity.Engineering;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.reach.Window;
import galena.build.spread.Drawn;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** How a tried build stands to each line, in figures. */
final class Verdicts {
    private static final double HOUR = 3600;

    private final Tried tried;
    private final Aim aim;
    private final List<Proposal.Verdict> verdicts = new ArrayList<>();

    private Verdicts(Tried tried, Aim aim) {
        this.tried = tried;
        this.aim = aim;
    }

    static List<Proposal.Verdict> of(Tried tried, Aim aim) {
        Verdicts all = new Verdicts(tried, aim);
        for (Line line : tried.standing().typical().keySet()) all.add(line);
        return all.verdicts;
    }

    private void add(Line line) {
        Intent intent = aim.intent();
        switch (line) {
            case STARTS -> copies(line, "margin above 0 %", Unit.FRACTION, read(Drawn.Quantity.MARGIN));
            case ON_CHANNEL ->
                copies(
                        line,
                        intent.carrier().orElseThrow() + " within the travel",
                        Unit.FRACTION,
                        read(Drawn.Quantity.TRIM));
            case HARMONICS ->
                copies(
                        line,
                        Engineering.exact(aim.harmonics(), Unit.DECIBEL).replace('-', '−') + " or lower",
                        Unit.DECIBEL,
                        read(Drawn.Quantity.HARMONIC));
            case DEPTH ->
                copies(
                        line,
                        intent.modulation().orElseThrow() + " under " + Engineering.exact(Aim.CLEAN, Unit.FRACTION)
                                + " distortion",
                        Unit.FRACTION,
                        read(Drawn.Quantity.DISTORTION));
            case LEVEL ->
                copies(
                        line,
                        "the depth for " + intent.programme().orElseThrow().level() + " of audio or less",
                        Unit.VOLT,
                        read(Drawn.Quantity.AUDIO));
            case RUNTIME -> copies(line, intent.runtime().orElseThrow() + " or longer", Unit.SECOND, d -> seconds(d));
            case DISTANCE -> distance();
            case LIMIT -> limit();
            case BAND ->
                typical(
                        line,
                        intent.programme().orElseThrow().band().high() + " less than 1 dB down: a loaded Q up to "
                                + Math.round(aim.mostQ()),
                        new Figure.Known(
                                tried.tankQ().orElse(0),
                                Unit.NUMBER,
                                tried.tankQ().orElse(0),
                                tried.tankQ().orElse(0),
                                "predicted, typical parts",
                                "loaded Q of the output tank",
                                ""));
        }
    }

    private static Function<Drawn, Optional<Double>> read(Drawn.Quantity quantity) {
        return d -> Optional.ofNullable(d.values().get(quantity));
    }

    private Optional<Double> seconds(Drawn drawn) {
        Double current = drawn.values().get(Drawn.Quantity.SUPPLY);
        OptionalDouble hours = current == null ? OptionalDouble.empty() : Aim.hours(tried.build(), current);
        return hours.isPresent() ? Optional.of(hours.getAsDouble() * HOUR) : Optional.empty();
    }

    private void copies(Line line, String wanted, Unit unit, Function<Drawn, Optional<Double>> read) {
        double[] sorted = tried.copies().stream()
                .flatMap(d -> read.apply(d).stream())
                .mapToDouble(v -> v)
                .sorted()
                .toArray();
        double meeting = Math.max(0, 1 - tried.standing().failing().getOrDefault(line, 0.0));
        verdicts.add(new Proposal.Verdict(line, wanted, window(line, unit, sorted), meeting, true));
    }

    private Figure window(Line line, Unit unit, double[] sorted) {
        if (sorted.length == 0) return new Figure.Missing(line.toString(), "no copy has it");
        return new Figure.Known(
                at(sorted, 0.5),
                unit,
                at(sorted, 0.025),
                at(sorted, 0.975),
                "95 % of " + sorted.length + " of " + tried.copies().size() + " drawn copies",
                line.toString(),
                "");
    }

    private static double at(double[] sorted, double share) {
        return sorted[(int) Math.round(share * (sorted.length - 1))];
    }

    private void typical(Line line, String wanted, Figure found) {
        double meeting = tried.standing().failing().containsKey(line) ? 0 : 1;
        verdicts.add(new Proposal.Verdict(line, wanted, found, meeting, false));
    }

    private double output() {
        return tried.typical().values().getOrDefault(Drawn.Quantity.OUTPUT, 0.0);
    }

    private void distance() {
        Optional<PartEntry> aerial = Aim.aerial(tried.build());
        OptionalDouble metres = aerial.isEmpty()
                ? OptionalDouble.empty()
                : Window.distance(aerial.get(), aim.intent(), aim.surroundings(), aim.set(), output());
        String wanted = aim.intent().distance().map(Quantity::toString).orElse("") + ", "
                + aim.set().replace('-', ' ');
        Figure found = metres.isEmpty()
                ? new Figure.Missing("distance", "no field can be reckoned, or the set does not play at all")
                : known(metres.getAsDouble(), Unit.METRE, "distance at which speech is followed with ease");
        typical(Line.DISTANCE, wanted, found);
    }

    private void limit() {
        double most =
                aim.window(tried.build(), tried.typical()).orElseThrow().most().orElse(0);
        double decibels = 20 * Math.log10(most / output());
        typical(
                Line.LIMIT,
                "at the crest of modulation, " + aim.intent().rules().orElse("no rules"),
                known(decibels, Unit.DECIBEL, "margin to the figure held, peaked output, typical parts"));
    }

    private static Figure.Known known(double value, Unit unit, String quantity) {
        return new Figure.Known(value, unit, value, value, "predicted, typical parts", quantity, "");
    }
}
