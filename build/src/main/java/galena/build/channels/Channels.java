package galena.build.channels;

import galena.build.folder.BuildFolder;
import galena.build.folder.Drawer;
import galena.build.folder.Intent;
import galena.build.folder.Layout;
import galena.build.folder.Station;
import galena.build.quantity.Engineering;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.trade.channel.BoxPart;
import galena.trade.channel.BoxSearch;
import galena.trade.channel.ChannelRanking;
import galena.trade.channel.HeardStation;
import galena.trade.channel.Landing;
import galena.trade.channel.RankedChannel;
import galena.trade.channel.Raster;
import galena.trade.limit.Region;
import galena.trade.limit.RuleBook;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The channels of a raster, ranked, and what in the drawer lands on them.
 *
 * @param name of the build
 * @param raster channels to choose from
 * @param stations how many are listed
 * @param ranked every channel, best first
 * @param wanted the intent's carrier weighed the same way, on the raster or not
 * @param ways out of the drawer, the best channel first; of one channel the easiest
 * @param notes what to know besides
 */
public record Channels(
        String name,
        Raster raster,
        int stations,
        List<RankedChannel> ranked,
        Optional<RankedChannel> wanted,
        List<Way> ways,
        List<String> notes) {
    /** A way that misses by more than this (Hz) and can't be pulled is no way. */
    private static final double MISSES_BY = 50;

    private static final int DIVIDERS_IN_A_CHAIN = 2;

    public Channels {
        ranked = List.copyOf(ranked);
        ways = List.copyOf(ways);
        notes = List.copyOf(notes);
    }

    /**
     * What is asked.
     *
     * @param when the transmitter is used
     * @param intermediates intermediate frequencies of the sets in the room (Hz)
     */
    public record Question(ChannelRanking.When when, List<Double> intermediates) {
        /** What most sets have (Hz); common practice. */
        public static final double USUAL_INTERMEDIATE = 455e3;

        public Question {
            intermediates = List.copyOf(intermediates);
        }

        /** @param word "day", "night" or "both" */
        public static Question of(String word, List<Double> intermediates) {
            return new Question(ChannelRanking.When.valueOf(word.toUpperCase(Locale.ROOT)), intermediates);
        }
    }

    /** A landing on a channel of a rank, 1 for the best. */
    public record Way(int rank, Landing landing) {}

    /** @throws BadInputException if neither the intent's raster nor its rules name channels that are held */
    public static Channels of(BuildFolder folder, Question question) throws BadInputException {
        Intent intent = folder.build().intent();
        List<String> notes = new ArrayList<>();
        Optional<Region> region = intent.rules().flatMap(RuleBook.standard()::region);
        Raster raster = raster(folder, region, notes);
        if (folder.stations().isEmpty())
            notes.add(
                    "No stations are listed: channels are ranked by harmonics and receivers alone. Listen by day and by night,"
                            + " and list what is heard in " + Layout.STATIONS.place() + ".");
        ChannelRanking ranking = new ChannelRanking(
                raster,
                folder.stations().stream().map(Channels::heard).toList(),
                question.intermediates(),
                region.map(RuleBook.standard()::restrictedBands).orElse(List.of()),
                question.when());
        List<RankedChannel> ranked = ranking.ranked();
        return new Channels(
                folder.build().name(),
                raster,
                folder.stations().size(),
                ranked,
                intent.carrier().map(c -> ranking.weigh(c.value())),
                ways(folder.drawer(), ranked, notes),
                notes);
    }

    private static Raster raster(BuildFolder folder, Optional<Region> region, List<String> notes)
            throws BadInputException {
        Intent intent = folder.build().intent();
        Optional<Raster> ofRegion = region.flatMap(r -> Raster.ofRegion(r.code()));
        Optional<Quantity> spacing = intent.raster();
        if (spacing.isEmpty() && ofRegion.isPresent()) return ofRegion.get();
        if (spacing.isEmpty())
            throw new BadInputException(new Problem(
                    folder.build().place("intent"),
                    "intent",
                    "names neither a raster nor rules that have one",
                    "Channels lie on the region's raster.",
                    "Write intent: {raster: 9 kHz} or {raster: 10 kHz}."));
        Optional<Raster> written = Raster.standard().stream()
                .filter(r -> Math.abs(r.spacing() - spacing.get().value()) < 1)
                .findFirst();
        if (written.isEmpty())
            throw new BadInputException(new Problem(
                    folder.build().place("intent.raster"),
                    "intent.raster",
                    '"' + spacing.get().text() + "\" is no raster that is held",
                    "Medium waves have channels every 9 kHz or every 10 kHz.",
                    "Write 9 kHz or 10 kHz."));
        if (ofRegion.isPresent() && ofRegion.get().spacing() != written.get().spacing())
            notes.add("The intent's raster of " + spacing.get().text() + " is not that of its rules, which have "
                    + Engineering.print((double) ofRegion.get().spacing(), Unit.HERTZ, 2)
                            .replace(".0", "") + ".");
        return written.get();
    }

    private static HeardStation heard(Station station) {
        String name = station.name().orElse(station.carrier().text());
        boolean day = !station.heard().equals("night"), night = !station.heard().equals("day");
        return new HeardStation(
                name,
                station.carrier().value(),
                day,
                night,
                HeardStation.Strength.valueOf(station.strength().toUpperCase(Locale.ROOT)));
    }

    private static List<Way> ways(Drawer drawer, List<RankedChannel> ranked, List<String> notes)
            throws BadInputException {
        List<BoxPart> box = new ArrayList<>();
        for (Quantity f : drawer.crystals())
            box.add(BoxPart.of("crystal " + f.text(), f.value(), BoxPart.Kind.CRYSTAL));
        for (Quantity f : drawer.resonators())
            box.add(BoxPart.of("resonator " + f.text(), f.value(), BoxPart.Kind.CERAMIC));
        if (box.isEmpty()) {
            notes.add("The drawer has no crystals or resonators. Listed in " + Layout.DRAWER.place()
                    + " as crystals, resonators and counters, they are tried on every channel.");
            return List.of();
        }
        List<Integer> counters = new ArrayList<>();
        for (Quantity n : drawer.counters()) counters.add(whole(n));
        List<Double> channels = ranked.stream().map(RankedChannel::frequency).toList();
        List<Way> ways = new ArrayList<>();
        for (Landing landing : new BoxSearch(box, counters, counters.isEmpty() ? 0 : DIVIDERS_IN_A_CHAIN)
                .landings(channels, MISSES_BY)) ways.add(new Way(channels.indexOf(landing.channel()) + 1, landing));
        ways.sort(Comparator.comparing((Way w) -> !w.landing().isReachable())
                .thenComparingInt(Way::rank)); // stable: of one channel the easiest stays first
        return ways;
    }

    private static int whole(Quantity number) throws BadInputException {
        if (number.value() == Math.rint(number.value())) return (int) number.value();
        throw new BadInputException(new Problem(
                new Place(Layout.DRAWER.place(), 1, 1),
                "counters",
                '"' + number.text() + "\" is no whole number",
                "A counter divides by a whole number."));
    }
}
