package galena.build.propose;

import galena.build.attempt.Aim;
import galena.build.attempt.Draft;
import galena.build.attempt.Line;
import galena.build.attempt.Looking;
import galena.build.attempt.Tried;
import galena.build.folder.Build;
import galena.build.folder.Intent;
import galena.build.folder.PartEntry;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.build.reach.Window;
import galena.build.source.BadInputException;
import galena.build.spread.Drawn;
import galena.build.spread.Drawn.Quantity;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/**
 * A line of the intent that the best build does not keep, and the nearest figure that it does.
 *
 * @param line that gives way
 * @param wanted in the intent's words
 * @param possible the nearest that 95 of 100 copies keep, or what typical parts keep where the line is judged by them
 * @param why in words
 */
public record GivesWay(Line line, String wanted, String possible, String why) {
    private static final double[] DEPTHS = {0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6, 0.5, 0.4, 0.3};
    private static final double KEPT = 0.95;
    private static final double FEW = 0.02;
    private static final int ROUNDS = 3;

    /**
     * @param lines that give way
     * @param intent changes: path in the build file to its new text
     * @param yield of the same build against the intent so changed; 0 when it could not be changed into one that is met
     */
    record Nearest(List<GivesWay> lines, Map<String, String> intent, double yield) {}

    /**
     * The nearest intent that a build meets, from its copies. It is drawn again under the intent so eased; what shows only then, such as the
     * level for a depth that is reached at last, is eased in turn.
     */
    static Nearest of(Tried best, Aim aim, Function<Aim, Looking> lookings, int count) {
        Map<String, String> changes = new LinkedHashMap<>();
        List<GivesWay> lines = new ArrayList<>();
        Tried now = best;
        Aim towards = aim;
        for (int round = 0; round < ROUNDS; round++) {
            int before = changes.size();
            Finder finder = new Finder(now, towards, lookings, changes, lines);
            for (Line line : Line.values()) {
                boolean known = lines.stream().anyMatch(g -> g.line() == line);
                if (!known && now.standing().failing().getOrDefault(line, 0.0) > (line.ofCopies() ? FEW : 0))
                    finder.find(line, count);
            }
            if (changes.size() == before) break;
            Build eased = eased(best.build(), changes);
            towards = new Aim(eased.intent(), aim.surroundings(), aim.set());
            Looking looking = lookings.apply(towards);
            Optional<Tried> again = looking.look(eased, now.running()).map(t -> looking.draw(t, count));
            if (again.isEmpty()) break;
            now = again.get();
            if (now.standing().meets())
                return new Nearest(lines, changes, now.standing().yield());
        }
        return new Nearest(lines, changes, 0);
    }

    private static Build eased(Build build, Map<String, String> changes) {
        try {
            return Draft.with(build, changes);
        } catch (BadInputException unfit) {
            throw new IllegalStateException("an eased intent can't be read: " + unfit.getMessage(), unfit);
        }
    }

    /** Finds the figure of one line after the other. */
    private record Finder(
            Tried best, Aim aim, Function<Aim, Looking> lookings, Map<String, String> changes, List<GivesWay> lines) {
        void find(Line line, int count) {
            Intent intent = aim.intent();
            switch (line) {
                case RUNTIME -> {
                    double hours = worst(d -> Aim.hours(best.build(), d.values().getOrDefault(Quantity.SUPPLY, 1.0))
                            .orElse(0));
                    double whole = hours >= 10 ? Math.floor(hours) : Math.floor(10 * hours) / 10;
                    add(
                            line,
                            intent.runtime().orElseThrow().toString(),
                            plain(whole) + " h",
                            "intent.runtime",
                            "its battery");
                }
                case HARMONICS -> {
                    double level = -worst(d -> -d.values().getOrDefault(Quantity.HARMONIC, 0.0));
                    add(
                            line,
                            Engineering.exact(aim.harmonics(), Unit.DECIBEL),
                            plain(Math.ceil(level)) + " dB",
                            "intent.harmonics",
                            "its output tank");
                }
                case LEVEL -> {
                    double volts = -worst(d -> -d.values().getOrDefault(Quantity.AUDIO, 1e3));
                    String text = Engineering.print(1.02 * volts, Unit.VOLT, 2);
                    add(
                            line,
                            intent.programme().orElseThrow().level().toString(),
                            text,
                            "intent.programme.level",
                            "the preset fully up");
                }
                case BAND -> {
                    double top = intent.programme().orElseThrow().band().high().value()
                            * Math.exp(best.standing().typical().getOrDefault(Line.BAND, 0.0));
                    String low = intent.programme().get().band().low().toString();
                    String text = low + ".." + Engineering.print(0.98 * top, Unit.HERTZ, 2);
                    add(
                            line,
                            intent.programme().get().band().toString(),
                            text,
                            "intent.programme.band",
                            "the output tank's Q");
                }
                case DISTANCE, LIMIT -> distance(line);
                case DEPTH -> depth(count);
                default ->
                    lines.add(new GivesWay(
                            line,
                            "every copy",
                            Math.round(100 * (1 - best.standing().failing().getOrDefault(line, 0.0)))
                                    + " of 100 copies",
                            "no value on hand does better"));
            }
        }

        private void add(Line line, String wanted, String possible, String path, String why) {
            lines.add(new GivesWay(line, wanted, possible, why));
            changes.put(path, possible);
        }

        private double worst(ToDoubleFunction<Drawn> figure) {
            double[] sorted =
                    best.copies().stream().mapToDouble(figure).sorted().toArray();
            return sorted[(int) Math.floor((1 - KEPT) * (sorted.length - 1))];
        }

        private static String plain(double number) {
            return Engineering.exact(Math.round(1000 * number) / 1000.0, Unit.NUMBER)
                    .replace("−", "-");
        }

        private void distance(Line line) {
            if (changes.containsKey("intent.distance")
                    || aim.intent().distance().isEmpty()) return;
            Optional<PartEntry> aerial = Aim.aerial(best.build());
            double output = best.typical().values().getOrDefault(Quantity.OUTPUT, 0.0);
            Optional<Window> window = aim.window(best.build(), best.typical());
            boolean held = window.isPresent()
                    && window.get().most().isPresent()
                    && output > 0.98 * window.get().most().getAsDouble();
            double usable = held ? 0.98 * window.orElseThrow().most().getAsDouble() : output;
            OptionalDouble metres = aerial.isEmpty()
                    ? OptionalDouble.empty()
                    : Window.distance(aerial.get(), aim.intent(), aim.surroundings(), aim.set(), usable);
            if (metres.isEmpty()) {
                lines.add(new GivesWay(
                        line, aim.intent().distance().get().toString(), "no distance", "no field can be reckoned"));
                return;
            }
            double nearest = Window.nearest(aerial.orElseThrow());
            if (metres.getAsDouble() < nearest) {
                lines.add(new GivesWay(
                        line,
                        aim.intent().distance().get().toString(),
                        "less than " + plain(nearest) + " m",
                        "nearer no field of this aerial is reckoned"));
                return;
            }
            double rounded = Math.floor(100 * metres.getAsDouble() * 0.995) / 100;
            String why = line == Line.LIMIT || nearLimit(window, output)
                    ? "the region's field limit, for a " + aim.set().replace('-', ' ')
                    : "the field that this aerial makes, for a " + aim.set().replace('-', ' ');
            add(line, aim.intent().distance().get().toString(), plain(rounded) + " m", "intent.distance", why);
        }

        private static boolean nearLimit(Optional<Window> window, double output) {
            return window.isPresent()
                    && window.get().most().isPresent()
                    && output > 0.8 * window.get().most().getAsDouble();
        }

        private void depth(int count) {
            double wanted = aim.intent().modulation().orElseThrow().value();
            for (double depth : DEPTHS) {
                if (depth >= wanted) continue;
                String text = Math.round(100 * depth) + " %";
                Build eased = eased(best.build(), Map.of("intent.modulation", text));
                Aim other = new Aim(eased.intent(), aim.surroundings(), aim.set());
                Looking looking = lookings.apply(other);
                Optional<Tried> tried =
                        looking.look(eased, best.running()).map(t -> looking.draw(t, Math.min(count, 40)));
                boolean kept =
                        tried.isPresent() && tried.get().standing().failing().getOrDefault(Line.DEPTH, 0.0) <= 1 - KEPT;
                if (!kept) continue;
                add(
                        Line.DEPTH,
                        aim.intent().modulation().get().toString(),
                        text,
                        "intent.modulation",
                        "distortion above 5 %");
                return;
            }
            lines.add(new GivesWay(
                    Line.DEPTH, aim.intent().modulation().get().toString(), "no depth", "it distorts at any depth"));
        }
    }
}
