package galena.trade.channel;

import galena.trade.channel.Nuisance.Kind;
import galena.trade.limit.Rule;
import galena.trade.source.DataTable;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/**
 * Ranks channels by what spoils them.
 *
 * <p>Two carriers d apart make a tone of d in a receiver up to its bandwidth; broadcasters hold ±20 Hz, so a carrier on a
 * station's own channel flutters. A superheterodyne with its oscillator above hears f + 2·IF as an image, and harmonics of
 * its IF (910 kHz is twice 455) whistle against a carrier near them. Points, our judgement: a station counts 1, 3, 6 or 10
 * by strength, tenfold on the channel, fourfold within 6 kHz, twice within 10 kHz, once on the image and where this channel is the image, three times for a
 * local's harmonic; the restricted band 20, another service 6, a receiver's tweet 8, a stop missed by stepping sets 12.
 *
 * @param raster channels to choose from
 * @param stations what the builder hears
 * @param intermediateFrequencies of the sets in the room (Hz), as 455 kHz; may be empty
 * @param restricted restricted bands of the region
 * @param when day, night or both
 */
public record ChannelRanking(
        Raster raster,
        List<HeardStation> stations,
        List<Double> intermediateFrequencies,
        List<Rule> restricted,
        When when) {
    /** Carriers nearer than this (Hz) flutter rather than whistle. */
    public static final double FLUTTER = 50;

    /** A whistle above this (Hz) is beyond what sets pass. */
    public static final double HIGHEST_WHISTLE = 10_000;

    private static final double SPLASH = 6_000;
    private static final int HIGHEST_HARMONIC = 5;
    private static final double MEDIUM_WAVES_END = 1_720_000;

    /** When the transmitter is used. */
    public enum When {
        DAY,
        NIGHT,
        BOTH
    }

    public ChannelRanking {
        stations = List.copyOf(stations);
        intermediateFrequencies = List.copyOf(intermediateFrequencies);
        restricted = List.copyOf(restricted);
        for (double each : intermediateFrequencies) {
            if (!(each > 0)) throw new IllegalArgumentException("an intermediate frequency is positive, not " + each);
        }
    }

    private record Service(String name, double low, double high) {}

    private static final class Services {
        static final List<Service> ALL = DataTable.resource(ChannelRanking.class, "services.csv").rows().stream()
                .map(row -> new Service(row.text("service"), row.required("low_hz"), row.required("high_hz")))
                .toList();
    }

    /** Every channel of the raster, best first; of equals those on both rasters, then the lower. */
    public List<RankedChannel> ranked() {
        ToDoubleFunction<RankedChannel> points =
                switch (when) {
                    case DAY -> RankedChannel::dayPoints;
                    case NIGHT -> RankedChannel::nightPoints;
                    case BOTH -> RankedChannel::points;
                };
        return raster.channels().stream()
                .map(this::weigh)
                .sorted(Comparator.comparingDouble(points)
                        .thenComparing(channel -> !channel.onBothRasters())
                        .thenComparingDouble(RankedChannel::frequency))
                .toList();
    }

    /** Everything against one frequency (Hz), on the raster or not. */
    public RankedChannel weigh(double frequency) {
        List<Nuisance> found = new ArrayList<>();
        if (!raster.isStep(frequency)) found.add(offRaster(frequency));
        for (HeardStation station : stations) {
            near(frequency, station, found);
            harmonicsOfLocal(frequency, station, found);
            image(frequency, station, found);
            imageOnStation(frequency, station, found);
            ownHarmonicOn(frequency, station, found);
        }
        tweets(frequency, found);
        ownHarmonics(frequency, found);
        found.sort(Comparator.comparingDouble(Nuisance::points).reversed());
        double day = found.stream()
                .filter(Nuisance::day)
                .mapToDouble(Nuisance::points)
                .sum();
        double night = found.stream()
                .filter(Nuisance::night)
                .mapToDouble(Nuisance::points)
                .sum();
        boolean both = Raster.nine().isStep(frequency) && Raster.ten().isStep(frequency);
        return new RankedChannel(frequency, day, night, both, found);
    }

    /** The tone (Hz) that two carriers make in a receiver; 0 if they flutter or lie too far apart to be heard. */
    public static double whistle(double one, double other) {
        double apart = Math.abs(one - other);
        return apart < FLUTTER || apart > HIGHEST_WHISTLE ? 0 : apart;
    }

    private Nuisance offRaster(double frequency) {
        double nearest = raster.nearest(frequency);
        return new Nuisance(
                Kind.OFF_RASTER,
                12,
                0,
                true,
                true,
                String.format(
                        Locale.ROOT,
                        "stepping sets stop at %s, %.0f Hz away",
                        kilohertz(nearest),
                        Math.abs(frequency - nearest)));
    }

    private static void near(double frequency, HeardStation station, List<Nuisance> found) {
        double apart = Math.abs(frequency - station.frequency());
        if (apart > HIGHEST_WHISTLE) return;
        double tone = whistle(frequency, station.frequency());
        if (apart < FLUTTER) {
            String words = station.name() + " is on the channel (" + strength(station) + "), the carriers flutter";
            found.add(of(Kind.SAME_CHANNEL, 10, 0, station, words));
            return;
        }
        String words = String.format(
                Locale.ROOT,
                "%s on %s (%s) makes a whistle of %.0f Hz",
                station.name(),
                kilohertz(station.frequency()),
                strength(station),
                tone);
        found.add(of(Kind.BESIDE, apart < SPLASH ? 4 : 2, tone, station, words));
    }

    private static void harmonicsOfLocal(double frequency, HeardStation station, List<Nuisance> found) {
        if (station.strength() != HeardStation.Strength.LOCAL) return;
        for (int order = 2; order <= 3; order++) {
            double harmonic = order * station.frequency();
            if (Math.abs(frequency - harmonic) > HIGHEST_WHISTLE) continue;
            String words = "harmonic " + order + " of " + station.name() + " falls on " + kilohertz(harmonic);
            found.add(of(Kind.HARMONIC_OF_LOCAL, 3, whistle(frequency, harmonic), station, words));
        }
    }

    /** Oscillator above: a set tuned to f also hears f + 2·IF. */
    private void image(double frequency, HeardStation station, List<Nuisance> found) {
        for (double intermediate : intermediateFrequencies) {
            double image = frequency + 2 * intermediate;
            if (Math.abs(image - station.frequency()) > HIGHEST_WHISTLE) continue;
            if (station.strength().compareTo(HeardStation.Strength.STRONG) < 0) continue;
            String words = station.name() + " on " + kilohertz(station.frequency())
                    + " is the image of sets with an IF of " + kilohertz(intermediate);
            found.add(of(Kind.IMAGE, 1, whistle(image, station.frequency()), station, words));
        }
    }

    /** And the other way: a set tuned to a station at f − 2·IF hears this channel as its image. */
    private void imageOnStation(double frequency, HeardStation station, List<Nuisance> found) {
        for (double intermediate : intermediateFrequencies) {
            double heardAt = frequency - 2 * intermediate;
            if (Math.abs(heardAt - station.frequency()) > HIGHEST_WHISTLE) continue;
            String words = "sets with an IF of " + kilohertz(intermediate) + " tuned to " + station.name() + " on "
                    + kilohertz(station.frequency()) + " hear it as an image";
            found.add(of(Kind.IMAGE_ON_STATION, 1, whistle(heardAt, station.frequency()), station, words));
        }
    }

    private void tweets(double frequency, List<Nuisance> found) {
        for (double intermediate : intermediateFrequencies) {
            for (int order = 2; order <= 3; order++) {
                double tweet = order * intermediate;
                double apart = Math.abs(frequency - tweet);
                if (apart > HIGHEST_WHISTLE) continue;
                String words = String.format(
                        Locale.ROOT,
                        "%d times the IF of %s is %s: a tweet of %.0f Hz in such sets",
                        order,
                        kilohertz(intermediate),
                        kilohertz(tweet),
                        apart);
                found.add(new Nuisance(Kind.RECEIVER_TWEET, 8, whistle(frequency, tweet), true, true, words));
            }
        }
    }

    private static void ownHarmonicOn(double frequency, HeardStation station, List<Nuisance> found) {
        for (int order = 2; order * frequency <= MEDIUM_WAVES_END; order++) {
            double harmonic = order * frequency;
            if (Math.abs(harmonic - station.frequency()) > HIGHEST_WHISTLE) continue;
            String words =
                    "its harmonic " + order + " disturbs " + station.name() + " on " + kilohertz(station.frequency());
            found.add(of(Kind.OWN_HARMONIC_ON_STATION, 1, 0, station, words));
        }
    }

    private void ownHarmonics(double frequency, List<Nuisance> found) {
        for (int order = 2; order <= HIGHEST_HARMONIC; order++) {
            double harmonic = order * frequency;
            for (Rule band : restricted) {
                if (!band.covers(harmonic)) continue;
                String words = "its harmonic " + order + ", " + kilohertz(harmonic) + ", lies in a restricted band ("
                        + band.section() + ")";
                found.add(new Nuisance(Kind.OWN_HARMONIC_RESTRICTED, 20, 0, true, true, words));
            }
            if (order > 2) continue;
            for (Service service : Services.ALL) {
                if (harmonic < service.low || harmonic > service.high) continue;
                String words = "its second harmonic, " + kilohertz(harmonic) + ", lies in " + service.name
                        + " (allocation recalled, unverified)";
                found.add(new Nuisance(Kind.OWN_HARMONIC_IN_SERVICE, 6, 0, true, true, words));
            }
        }
    }

    private static Nuisance of(Kind kind, int times, double tone, HeardStation station, String words) {
        double points = (double) times * station.strength().points();
        return new Nuisance(kind, points, tone, station.day(), station.night(), words);
    }

    private static String strength(HeardStation station) {
        String time = station.day() && station.night() ? "day and night" : station.day() ? "by day" : "by night";
        return station.strength().name().toLowerCase(Locale.ROOT) + " " + time;
    }

    private static String kilohertz(double frequency) {
        return BigDecimal.valueOf(Math.round(frequency), 3).stripTrailingZeros().toPlainString() + " kHz";
    }
}
