package galena.build.propose;

import galena.build.attempt.Aim;
import galena.build.attempt.Depth;
import galena.build.attempt.Draft;
import galena.build.attempt.Looking;
import galena.build.attempt.Neighbour;
import galena.build.attempt.OutputTank;
import galena.build.attempt.Stock;
import galena.build.attempt.Tried;
import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.pattern.Pattern;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.quantity.Engineering;
import galena.build.quantity.Range;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.spread.Spread;
import galena.engine.equations.Equations;
import galena.engine.startup.Mode;
import galena.engine.steady.OrbitDerivatives;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Proves the build that a search ended at, sets its presets, asks its neighbours and puts everything into words. */
final class Finish {
    private static final double TURN = 1e-3;

    private final Aim aim;
    private final Looking looking;
    private final Function<Aim, Looking> lookings;
    private final Stock stock;
    private final OnHand onHand;
    private final long seed;
    private final Progress progress;
    private final Reasons reasons = new Reasons();

    Finish(
            Aim aim,
            Looking looking,
            Function<Aim, Looking> lookings,
            Stock stock,
            OnHand onHand,
            long seed,
            Progress progress) {
        this.aim = aim;
        this.looking = looking;
        this.lookings = lookings;
        this.stock = stock;
        this.onHand = onHand;
        this.seed = seed;
        this.progress = progress;
    }

    Proposal ofPattern(
            Pattern pattern, Tried best, List<Search.Step> steps, List<Proposal.Considered> considered, int count)
            throws BadInputException {
        Tried proven = proven(best, count);
        Tried set = Depth.set(proven, looking);
        List<Proposal.Value> values = values(pattern.name(), proven, set.build());
        Proposal bare = proposal(Optional.of(pattern.name()), proven, set, values, changes(steps), considered, count);
        List<String> head = List.of(
                "Proposed by prediction from the intent below, on the pattern " + pattern.name() + ".",
                String.format(
                        Locale.ROOT,
                        "%.1f %% of %d copies meet it, over tolerances, devices, −10 to +50 °C and the battery's life (seed %d).",
                        100 * bare.yield().value(),
                        count,
                        seed),
                "Below each part: why it is there, then what the next value up and down would do, each by its own prediction with"
                        + " typical parts and the trimmer turned back to the channel.");
        return withText(bare, Commented.fresh(set.build(), head, values, recipes(set.build())));
    }

    Proposal ofGiven(Build given, Tried best, List<Search.Step> steps, int count) throws BadInputException {
        Tried proven = proven(best, count);
        Tried set = Depth.set(proven, looking);
        List<Proposal.Change> changes = new ArrayList<>(changes(steps));
        follow(given, set.build(), changes);
        Proposal bare =
                proposal(Optional.empty(), proven, set, values("", proven, set.build()), changes, List.of(), count);
        return withText(bare, changes.isEmpty() ? given.file().text() : Commented.kept(set.build(), changes));
    }

    private Tried proven(Tried best, int count) {
        progress.at(0.75, count + " copies");
        return looking.draw(best, count);
    }

    private Proposal proposal(
            Optional<String> pattern,
            Tried proven,
            Tried set,
            List<Proposal.Value> values,
            List<Proposal.Change> changes,
            List<Proposal.Considered> considered,
            int count) {
        boolean meets = proven.standing().meets();
        GivesWay.Nearest nearest =
                meets ? new GivesWay.Nearest(List.of(), Map.of(), 0) : GivesWay.of(proven, aim, lookings, count);
        return new Proposal(
                pattern,
                set.build(),
                "",
                Verdicts.of(proven, aim),
                Spread.share(proven.copies(), d -> aim.slack(proven.build(), d).values().stream()
                        .allMatch(s -> s >= 0)),
                count,
                seed,
                meets,
                values,
                changes,
                considered,
                nearest.lines(),
                nearest.yield(),
                notes(set));
    }

    private static Proposal withText(Proposal p, String text) throws BadInputException {
        return new Proposal(
                p.pattern(),
                Draft.read(text),
                text,
                p.verdicts(),
                p.yield(),
                p.count(),
                p.seed(),
                p.meets(),
                p.values(),
                p.changes(),
                p.considered(),
                p.givesWay(),
                p.eased(),
                p.notes());
    }

    private List<Proposal.Value> values(String pattern, Tried here, Build shown) {
        progress.at(0.85, "a step up and down of each value");
        String trimmer = here.running().strongestTrimmer();
        return here.build().parts().values().parallelStream()
                .map(part -> new Proposal.Value(
                        part.name(),
                        value(shown.part(part.name()).orElseThrow()),
                        reason(pattern, part.name(), here.running(), trimmer),
                        neighbour(here, part, 1),
                        neighbour(here, part, -1)))
                .toList();
    }

    /** Names tell what a part does in a pattern alone; of the builder's own parts nothing is said but the trimmer's fineness. */
    private String reason(String pattern, String part, Running running, String trimmer) {
        String words = pattern.isEmpty() ? "" : reasons.of(pattern, part).orElse("");
        if (!part.equals(trimmer)) return words;
        return (words.isEmpty() ? "" : words + ". ") + turn(running, trimmer);
    }

    /** How fine the carrier's trimmer turns. */
    private static String turn(Running running, String trimmer) {
        double position = running.position(trimmer);
        double low = Math.max(0, position - TURN), high = Math.min(1, position + TURN);
        double slope = new OrbitDerivatives(running.state())
                .between(
                        Equations.of(running.turned(trimmer, low)),
                        Equations.of(running.turned(trimmer, high)),
                        (high - low) / 2)
                .frequency();
        return "One percent of its travel is " + Engineering.print(Math.abs(slope) / 100, Unit.HERTZ, 2);
    }

    private static String value(PartEntry part) {
        String set =
                part.isAdjustable() ? " at " + Engineering.exact(part.position().orElseThrow(), Unit.FRACTION) : "";
        String turns = part.kind().isAerial() && part.values().has("turns")
                ? ", " + Math.round(part.values().si("turns")) + " turns"
                : "";
        return part.label() + turns + set;
    }

    private Optional<Neighbour> neighbour(Tried here, PartEntry part, int way) {
        Optional<Move> move = Move.step(here.build(), part.name(), way, stock, onHand);
        if (move.isEmpty()) return Optional.empty();
        Optional<Build> moved = Search.moved(here.build(), move.get());
        if (moved.isEmpty()) return Optional.empty();
        return Optional.of(looking.look(moved.get(), here.running())
                .map(t -> peaked(part, t, Neighbour.of(move.get().to(), here, looking.beside(here, t))))
                .orElse(Neighbour.silent(move.get().to())));
    }

    /** What detunes the output is peaked again by its trimmer, or lies beyond it. */
    private Neighbour peaked(PartEntry part, Tried there, Neighbour neighbour) {
        Build build = there.build();
        Optional<PartEntry> trimmer =
                OutputTank.across(build, PartKind.TRIMMER, there.running().strongestTrimmer());
        boolean tunes = part.kind().isAerial()
                || OutputTank.across(build, PartKind.CAPACITOR, "")
                        .filter(c -> c.name().equals(part.name()))
                        .isPresent();
        Optional<Mode> mode = OutputTank.mode(there.running());
        if (!tunes || trimmer.isEmpty() || mode.isEmpty()) return neighbour;
        Range range = trimmer.get().range().orElseThrow();
        double span = range.high().value() - range.low().value();
        double position = trimmer.get().position().orElseThrow()
                + OutputTank.missing(there.running(), mode.get(), aim.carrier()) / span;
        String words = position < 0 || position > 1
                ? "; " + trimmer.get().name() + " does not reach to peak it again"
                : "; until " + trimmer.get().name() + " is peaked again, at " + Math.round(100 * position) + " %";
        return new Neighbour(neighbour.to(), neighbour.effects() + words, neighbour.yield());
    }

    private static List<Proposal.Change> changes(List<Search.Step> steps) {
        return steps.stream()
                .map(s -> new Proposal.Change(
                        s.move().part(),
                        s.from(),
                        s.move().to(),
                        Neighbour.effects(s.before().typical(), s.after().typical()),
                        s.before().standing().yield(),
                        s.after().standing().yield()))
                .toList();
    }

    /** What had to follow the changes: adjustments, and the parts that keep the carrier on its channel. */
    private static void follow(Build given, Build end, List<Proposal.Change> changes) {
        for (PartEntry part : end.parts().values()) {
            String before = value(given.part(part.name()).orElseThrow()), after = value(part);
            boolean listed = changes.stream().anyMatch(c -> c.part().equals(part.name()));
            if (before.equals(after) || listed) continue;
            String buys = part.kind() == PartKind.PRESET
                    ? "the programme's level then gives the wanted depth"
                    : "follows: keeps carrier or output on the channel";
            changes.add(new Proposal.Change(part.name(), before, after, buys, 0, 0));
        }
    }

    /** How coils are wound, for the written build. */
    private Map<String, String> recipes(Build build) {
        Map<String, String> recipes = new LinkedHashMap<>();
        for (PartEntry part : build.parts().values()) {
            if (!part.kind().isCoil() || part.value().isEmpty()) continue;
            double henries = part.value().get().value();
            Optional<OnHand.Wound> wound = part.kind().isAerial()
                    ? onHand.form(part).flatMap(f -> onHand.aerial(f, henries))
                    : stock.coil(henries).isPresent() ? Optional.empty() : onHand.tube(henries);
            wound.ifPresent(w -> recipes.put(part.name(), w.recipe() + "."));
        }
        return recipes;
    }

    private List<String> notes(Tried set) {
        List<String> notes = new ArrayList<>();
        for (PartEntry part : set.build().parts().values()) {
            boolean counted = part.kind() == PartKind.RESISTOR || part.kind() == PartKind.CAPACITOR;
            if (counted && !stock.holds(part.kind(), part.value().orElseThrow().value()))
                notes.add(part.name() + ": the drawer lacks " + part.label()
                        + "; galena substitute says what two parts make.");
            if (stock.hasDevices()
                    && part.type().isPresent()
                    && !stock.holdsDevice(part.type().get()))
                notes.add(part.name() + ": the drawer lacks " + part.label() + ".");
        }
        notes.add("Depth and distortion are those of slow audio: the tanks' memory is left out.");
        notes.add(
                "Distance and field limit are judged for typical parts with the output peaked; the limits held may be out of"
                        + " date. Your regulator's text and licensed practice decide.");
        return notes;
    }
}
