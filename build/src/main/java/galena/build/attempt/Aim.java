package galena.build.attempt;

import galena.build.folder.Build;
import galena.build.folder.Intent;
import galena.build.folder.PartEntry;
import galena.build.folder.Supply;
import galena.build.quantity.Quantity;
import galena.build.reach.Surroundings;
import galena.build.reach.Window;
import galena.build.source.Node;
import galena.build.spread.Drawn;
import galena.build.wiring.CircuitOf;
import galena.trade.battery.Battery;
import galena.trade.battery.Endurance;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The intent as numbers, and how a read build stands to each line of it. What the intent doesn't name isn't judged, harmonics and
 * distortion apart, whose usual lines the spread's copies are held to anyway. Many threads share it.
 */
public final class Aim {
    private static final double USUAL_HARMONICS = -30;
    public static final double CLEAN = 0.05;
    private static final double HOUR = 3600;

    /** How much of the band's upper end the output tank may take away: 1 dB, common practice. */
    private static final double EDGE_LOSS = 1;

    private final Intent intent;
    private final Surroundings surroundings;
    private final String set;
    private final Map<String, Window.Answer> windows = new ConcurrentHashMap<>();

    /** @param set class of set that shall hear it, one of {@link Window#sets} */
    public Aim(Intent intent, Surroundings surroundings, String set) {
        this.intent = intent;
        this.surroundings = surroundings;
        this.set = set;
    }

    public Intent intent() {
        return intent;
    }

    public String set() {
        return set;
    }

    public Surroundings surroundings() {
        return surroundings;
    }

    public double carrier() {
        return intent.carrier().orElseThrow().value();
    }

    public double harmonics() {
        return intent.harmonics().map(Quantity::value).orElse(USUAL_HARMONICS);
    }

    /** The part that radiates, if the build has one that a field can be reckoned of. */
    public static Optional<PartEntry> aerial(Build build) {
        return build.parts().values().stream().filter(p -> p.kind().isAerial()).findFirst();
    }

    /** Between what currents the aerial is heard and stays inside the limit. */
    public Optional<Window> window(Build build, Drawn read) {
        double input = read.values().getOrDefault(Drawn.Quantity.SUPPLY, 0.0)
                * build.supply().map(s -> CircuitOf.state(s).voltage()).orElse(0.0);
        return window(build, input);
    }

    private Optional<Window> window(Build build, double input) {
        Optional<PartEntry> aerial = aerial(build);
        if (aerial.isEmpty()) return Optional.empty();
        Node node = build.top().find(aerial.get().path()).orElseThrow();
        String text = build.file().text();
        String key =
                text.substring(text.offsetByCodePoints(0, node.span().start()), text.offsetByCodePoints(0, node.end()))
                        + Math.ceil(20 * input);
        Window.Answer answer = windows.computeIfAbsent(
                key, k -> Window.of(aerial.get(), intent, surroundings, set, Math.ceil(20 * input) / 20));
        return answer instanceof Window.Known known ? Optional.of(known.window()) : Optional.empty();
    }

    /** Hours of the build's battery at a supply current, typical capacity; none where no capacity is known. */
    public static OptionalDouble hours(Build build, double current) {
        if (!(current > 0) || build.supply().isEmpty()) return OptionalDouble.empty();
        if (build.supply().get() instanceof Supply.OfVoltage given)
            return given.capacity()
                    .map(c -> OptionalDouble.of(c.value() / current / HOUR))
                    .orElse(OptionalDouble.empty());
        Supply.OfBattery named = (Supply.OfBattery) build.supply().get();
        Battery battery = CircuitOf.battery(named);
        return battery.runtime(current, battery.endVoltage()) instanceof Endurance.Lasts lasts
                ? OptionalDouble.of(lasts.hours() * named.charge())
                : OptionalDouble.of(0);
    }

    /** Slack of one read copy to every line that copies are held to. */
    public Map<Line, Double> slack(Build build, Drawn drawn) {
        Map<Line, Double> slack = new EnumMap<>(Line.class);
        Map<Drawn.Quantity, Double> v = drawn.values();
        slack.put(Line.STARTS, v.getOrDefault(Drawn.Quantity.MARGIN, -1.0));
        if (v.containsKey(Drawn.Quantity.TRIM)) {
            double trim = v.get(Drawn.Quantity.TRIM);
            slack.put(Line.ON_CHANNEL, 2 * Math.min(trim, 1 - trim));
        } else if (v.containsKey(Drawn.Quantity.MISSED)) {
            slack.put(
                    Line.ON_CHANNEL, -Math.min(1, Math.abs(v.get(Drawn.Quantity.MISSED)) / (0.02 * carrier())) - 1e-3);
        } else if (!drawn.isGood()) slack.put(Line.ON_CHANNEL, -1.0);
        slack.put(Line.HARMONICS, (harmonics() - v.getOrDefault(Drawn.Quantity.HARMONIC, 0.0)) / 10);
        if (intent.modulation().isPresent()) {
            slack.put(Line.DEPTH, 1 - v.getOrDefault(Drawn.Quantity.DISTORTION, 2 * CLEAN) / CLEAN);
            if (intent.programme().isPresent() && v.containsKey(Drawn.Quantity.AUDIO)) {
                double level = intent.programme().get().level().value();
                slack.put(Line.LEVEL, Math.log(level / v.get(Drawn.Quantity.AUDIO)));
            }
        }
        if (intent.runtime().isPresent()) {
            OptionalDouble hours = hours(build, v.getOrDefault(Drawn.Quantity.SUPPLY, 0.0));
            if (hours.isPresent())
                slack.put(
                        Line.RUNTIME,
                        Math.log(Math.max(1e-3, hours.getAsDouble())
                                / (intent.runtime().get().value() / HOUR)));
        }
        return slack;
    }

    /** Slack of the typical build to the lines that it alone is held to. */
    public Map<Line, Double> typicalSlack(Build build, Drawn typical, OptionalDouble tankQ) {
        Map<Line, Double> slack = new EnumMap<>(Line.class);
        double output = typical.values().getOrDefault(Drawn.Quantity.OUTPUT, 0.0);
        Optional<Window> window = window(build, typical);
        if (window.isPresent() && output > 0) {
            window.get().least().ifPresent(least -> slack.put(Line.DISTANCE, Math.log(output / least)));
            window.get().most().ifPresent(most -> slack.put(Line.LIMIT, Math.log(most / output)));
        } else if (intent.distance().isPresent()) slack.put(Line.DISTANCE, -1.0);
        if (tankQ.isPresent() && intent.programme().isPresent())
            slack.put(Line.BAND, Math.log(mostQ() / tankQ.getAsDouble()));
        return slack;
    }

    /** The loaded Q at which a single tuned circuit takes EDGE_LOSS from the band's upper end. */
    public double mostQ() {
        double top = intent.programme().orElseThrow().band().high().value();
        double detuned = Math.sqrt(Math.pow(10, EDGE_LOSS / 10) - 1);
        return detuned * carrier() / (2 * top);
    }
}
