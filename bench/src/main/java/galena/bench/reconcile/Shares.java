package galena.bench.reconcile;

import galena.build.figure.Figure;
import galena.build.folder.LogEntry.What;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.build.readings.Latent;
import galena.build.readings.Latent.Kind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** How much of the carrier's departure from the prediction each thing explains: the mean of its slopes at both ends times its move. */
final class Shares {
    /** Ends of an interval that differ by less than this ratio are told as one half-width. */
    private static final double EVEN = 0.67;

    private static final int MOST = 3;
    /** Of the departure: what explains less is not named. */
    private static final double NAMED = 0.08;

    private final Fit.Point before;
    private final Fit fit;
    private final Explanations explanations;
    private final List<Latent> latents;

    Shares(Fit.Point before, Fit fit, Explanations explanations) {
        this.before = before;
        this.fit = fit;
        this.explanations = explanations;
        latents = explanations.latents();
    }

    /** Unknowns that are one thing to a builder: what a net carries to ground, or one unknown by itself. */
    private record Group(String key, List<Integer> numbers, Optional<String> net) {}

    List<String> words(List<Observation> observed) {
        Optional<Integer> carrier = farthestCarrier(observed, before);
        if (carrier.isEmpty()) return List.of();
        int i = carrier.get();
        Observation o = observed.get(i);
        double typical = o.shown(before.readings().values()[i]), read = o.shown(o.value()), away = read - typical;
        if (Math.abs(o.value() - before.readings().values()[i]) < 3 * o.sigma())
            return List.of("The carrier is where the prediction puts it.");
        List<String> words = new ArrayList<>();
        words.add(Telling.named(o).replaceFirst("^t", "T") + " lies " + hertz(Math.abs(away)) + " "
                + (away < 0 ? "below" : "above") + " what typical parts give.");
        groups().entrySet().stream()
                .map(e -> Map.entry(e.getValue(), share(e.getValue(), i) * typical))
                .filter(e -> e.getValue() * away > 0 && Math.abs(e.getValue()) > NAMED * Math.abs(away))
                .sorted(Comparator.comparingDouble(e -> -Math.abs(e.getValue())))
                .limit(MOST)
                .forEach(e -> words.add(
                        sentence(e.getKey()) + "; that explains " + hertz(Math.abs(e.getValue())) + " of it."));
        return words;
    }

    private static Optional<Integer> farthestCarrier(List<Observation> observed, Fit.Point before) {
        Optional<Integer> best = Optional.empty();
        double most = -1;
        for (int i = 0; i < observed.size(); i++) {
            if (observed.get(i).asked().what() != What.CARRIER) continue;
            double away = Math.abs(observed.get(i).value() - before.readings().values()[i]);
            if (away <= most) continue;
            most = away;
            best = Optional.of(i);
        }
        return best;
    }

    private Map<String, Group> groups() {
        Map<String, Group> groups = new LinkedHashMap<>();
        for (int j = 0; j < latents.size(); j++) {
            Optional<String> net = explanations.model().grounded(j);
            String key = net.map(n -> "net " + n).orElse(latents.get(j).key());
            groups.computeIfAbsent(key, k -> new Group(k, new ArrayList<>(), net))
                    .numbers()
                    .add(j);
        }
        return groups;
    }

    private double share(Group group, int reading) {
        double sum = 0;
        for (int j : group.numbers())
            sum += 0.5 * (before.slopes()[reading][j] + fit.slopes()[reading][j]) * fit.z()[j];
        return sum;
    }

    private String sentence(Group group) {
        if (group.net().isPresent()) {
            double[] drawn = new double[latents.size()];
            double already = group.numbers().stream()
                    .filter(j -> latents.get(j).kind() == Kind.STRAY)
                    .mapToDouble(j -> explanations.model().shown(j, drawn))
                    .sum();
            double[] more = explanations.interval(z -> group.numbers().stream()
                            .mapToDouble(j -> explanations.model().shown(j, z))
                            .sum()
                    - already);
            return "The net " + group.net().get() + " carries " + interval(more, Unit.FARAD) + " more than drawn";
        }
        int j = group.numbers().get(0);
        Latent latent = latents.get(j);
        if (latent.kind() == Kind.CIRCUMSTANCE) return capital(latent.shown()) + " was not quite so";
        double[] now = explanations.interval(z -> explanations.model().shown(j, z));
        double typical = explanations.model().shown(j, new double[latents.size()]);
        String is = capital(latent.shown()) + " is " + interval(now, latent.unit());
        return latent.kind() == Kind.ADDED
                ? is
                : is + " against " + Engineering.print(typical, latent.unit(), 4) + " typical";
    }

    /** "103.1 µH ± 1.9 µH", or with both ends where they are far from even about the middle. */
    private static String interval(double[] middleLowHigh, Unit unit) {
        double middle = middleLowHigh[0], below = middle - middleLowHigh[1], above = middleLowHigh[2] - middle;
        double half = Math.max(above, below);
        if (Math.min(above, below) > EVEN * half) return Telling.plusMinus(middle, half, unit);
        Figure.Known known = new Figure.Known(
                middle, unit, Math.min(middle, middleLowHigh[1]), Math.max(middle, middleLowHigh[2]), "", "", "");
        return known.text() + " (" + known.interval() + ")";
    }

    private static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    private static String hertz(double value) {
        return Engineering.print(value, Unit.HERTZ, 2);
    }
}
