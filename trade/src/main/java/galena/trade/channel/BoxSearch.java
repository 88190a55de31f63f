package galena.trade.channel;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Which crystal or resonator, alone or mixed with another, through which dividers, lands on which channel.
 *
 * @param parts what the box holds
 * @param dividers moduli that its counters can be set to, as 2, 5, 10, 16; each may be used in every stage
 * @param stages most dividers in a chain
 */
public record BoxSearch(List<BoxPart> parts, List<Integer> dividers, int stages) {
    private static final int MOST_STAGES = 4;

    /** Beyond this nothing that oscillates lands on medium waves. */
    private static final int LARGEST_DIVISION = 10_000;

    public BoxSearch {
        parts = List.copyOf(parts);
        dividers = dividers.stream().distinct().sorted().toList();
        if (stages < 0 || stages > MOST_STAGES) {
            throw new IllegalArgumentException("a chain has 0 to " + MOST_STAGES + " stages, not " + stages);
        }
        for (int each : dividers) {
            if (each < 2 || each > LARGEST_DIVISION)
                throw new IllegalArgumentException(
                        "a divider divides by 2 to " + LARGEST_DIVISION + ", not by " + each);
        }
    }

    /**
     * Every way that can be pulled onto a channel or misses it by no more than {@code tolerance}.
     *
     * @param channels (Hz)
     * @param tolerance greatest error unpulled (Hz) of a way that can't be pulled there
     * @return those that land first, the easiest before the others: fewest stages (a mixer counts as two), an even last
     *     stage before an odd one, least pull against its room; then those that miss, by their error
     */
    public List<Landing> landings(List<Double> channels, double tolerance) {
        if (!(tolerance >= 0)) throw new IllegalArgumentException("a tolerance is zero or more, not " + tolerance);
        Map<Integer, List<Integer>> chains = chains();
        NavigableSet<Double> sorted = new TreeSet<>(channels);
        List<Landing> found = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            BoxPart a = parts.get(i);
            land(a, Optional.empty(), Landing.Mix.ALONE, a.frequency(), chains, sorted, tolerance, found);
            for (int j = i + 1; j < parts.size(); j++) {
                BoxPart b = parts.get(j);
                boolean ordered = a.frequency() >= b.frequency();
                BoxPart high = ordered ? a : b;
                BoxPart low = ordered ? b : a;
                double sum = high.frequency() + low.frequency();
                double difference = high.frequency() - low.frequency();
                land(high, Optional.of(low), Landing.Mix.SUM, sum, chains, sorted, tolerance, found);
                if (difference > 0) {
                    land(high, Optional.of(low), Landing.Mix.DIFFERENCE, difference, chains, sorted, tolerance, found);
                }
            }
        }
        found.sort(Comparator.comparing((Landing landing) -> !landing.isReachable())
                .thenComparingDouble(landing -> landing.isReachable() ? landing.stages() : Math.abs(landing.error()))
                .thenComparing(landing -> !landing.endsEven())
                .thenComparingDouble(landing -> Math.abs(landing.pullNeeded()) / Math.max(1e-9, landing.pullRoom()))
                .thenComparingDouble(Landing::channel));
        return List.copyOf(found);
    }

    /** Shortest chain for every total division, even stage last where there is one. */
    private Map<Integer, List<Integer>> chains() {
        Map<Integer, List<Integer>> chains = new LinkedHashMap<>();
        chains.put(1, List.of());
        List<List<Integer>> last = List.of(List.of());
        for (int stage = 0; stage < stages; stage++) {
            List<List<Integer>> next = new ArrayList<>();
            for (List<Integer> chain : last) {
                for (int divider : dividers) {
                    List<Integer> longer = new ArrayList<>(chain);
                    longer.add(divider);
                    longer.sort(Comparator.comparing((Integer d) -> d % 2 == 0).thenComparing(d -> d));
                    long total = longer.stream().mapToLong(Integer::longValue).reduce(1, (a, b) -> a * b);
                    if (total > LARGEST_DIVISION) continue;
                    if (chains.putIfAbsent((int) total, longer) == null) next.add(longer);
                }
            }
            last = next;
        }
        return chains;
    }

    private static double room(BoxPart part) {
        return Math.max(part.room(1), part.room(-1));
    }

    private static void land(
            BoxPart first,
            Optional<BoxPart> second,
            Landing.Mix mix,
            double base,
            Map<Integer, List<Integer>> chains,
            NavigableSet<Double> channels,
            double tolerance,
            List<Landing> found) {
        double most = Math.max(room(first), second.isPresent() ? room(second.get()) : 0);
        chains.forEach((total, chain) -> {
            double frequency = base / total;
            double reach = Math.max(tolerance, most / total);
            for (double channel : channels.subSet(frequency - reach, true, frequency + reach, true)) {
                double error = frequency - channel;
                double pull = -error * total;
                BoxPart pulled = first;
                if (second.isPresent()) {
                    double other = mix == Landing.Mix.SUM ? pull : -pull;
                    if (second.get().room(other) > first.room(pull)) {
                        pulled = second.get();
                        pull = other;
                    }
                }
                double room = pulled.room(pull);
                if (Math.abs(error) > tolerance && Math.abs(pull) > room) continue;
                found.add(new Landing(
                        channel,
                        first,
                        second,
                        mix,
                        chain,
                        frequency,
                        error,
                        ChannelRanking.whistle(frequency, channel),
                        pulled,
                        pull,
                        room));
            }
        });
    }
}
