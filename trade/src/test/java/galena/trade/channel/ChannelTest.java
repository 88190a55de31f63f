package galena.trade.channel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.proof.Kind;
import galena.proof.Published;
import galena.trade.channel.HeardStation.Strength;
import galena.trade.limit.Rule;
import galena.trade.limit.RuleBook;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ChannelTest {
    private static final Published ARITHMETIC = Published.source(
            "trade", Kind.COMMON_PRACTICE, "arithmetic of channels, images and dividers as builders do it");

    private static final double EXACT = 1e-6;

    private static ChannelRanking ranking(Raster raster, ChannelRanking.When when, HeardStation... stations) {
        return new ChannelRanking(raster, List.of(stations), List.of(455e3), List.of(), when);
    }

    private static HeardStation local(double frequency) {
        return new HeardStation("the local", frequency, true, true, Strength.LOCAL);
    }

    @Test
    void rasters_count_their_channels_and_meet_every_ninety_kilohertz() {
        assertThat(Raster.nine().channels())
                .hasSize(120)
                .startsWith(531e3, 540e3)
                .endsWith(1602e3);
        assertThat(Raster.ten().channels()).hasSize(118).startsWith(530e3).endsWith(1700e3);
        List<Double> both = new ArrayList<>();
        for (int kilohertz = 540; kilohertz <= 1620; kilohertz += 90) both.add(kilohertz * 1e3);
        ARITHMETIC.holds(
                "channels on both rasters run from 540 to 1620 kHz by 90",
                Raster.onBoth().equals(both),
                "" + Raster.onBoth());
        assertThat(Raster.ofRegion("us")).hasValue(Raster.ten());
        assertThat(Raster.ofRegion("cept")).hasValue(Raster.nine());
        assertThat(Raster.ofRegion("atlantis")).isEmpty();
        assertThat(Raster.nine().nearest(1e6)).isEqualTo(999e3);
        assertThat(Raster.nine().isStep(1e6)).isFalse();
    }

    @Test
    void a_megahertz_crystal_whistles_against_999_kilohertz() {
        ARITHMETIC.matches("1 MHz against 999 kHz (Hz)", 1000, ChannelRanking.whistle(1e6, 999e3), EXACT);
        assertThat(ChannelRanking.whistle(999e3, 999_020)).isZero();
        assertThat(ChannelRanking.whistle(999e3, 1_020e3)).isZero();
        RankedChannel megahertz = ranking(
                        Raster.nine(),
                        ChannelRanking.When.BOTH,
                        new HeardStation("the far one", 999e3, false, true, Strength.FAIR))
                .weigh(1e6);
        assertThat(megahertz.nuisances())
                .extracting(Nuisance::kind)
                .contains(Nuisance.Kind.BESIDE, Nuisance.Kind.OFF_RASTER);
        assertThat(megahertz.reason()).isNotBlank();
        assertThat(megahertz.nightPoints()).isGreaterThan(megahertz.dayPoints());
    }

    @Test
    void a_strong_local_spoils_its_second_harmonic_and_twice_the_if_tweets() {
        ChannelRanking ranking = ranking(Raster.ten(), ChannelRanking.When.BOTH, local(850e3));
        assertThat(kinds(ranking.weigh(1700e3))).contains(Nuisance.Kind.HARMONIC_OF_LOCAL);
        // Twice 910 kHz lies in an amateur band, too.
        assertThat(kinds(ranking.weigh(910e3)))
                .containsExactly(Nuisance.Kind.RECEIVER_TWEET, Nuisance.Kind.OWN_HARMONIC_IN_SERVICE);
        assertThat(ranking.weigh(910e3).nuisances().get(0).words())
                .contains("910 kHz")
                .contains("455 kHz");
        assertThat(kinds(ranking.weigh(1370e3))).containsExactly(Nuisance.Kind.RECEIVER_TWEET);
        assertThat(kinds(ranking.weigh(1300e3))).isEmpty();
        assertThat(ranking.weigh(1300e3).reason()).contains("nothing");
    }

    private static List<Nuisance.Kind> kinds(RankedChannel channel) {
        return channel.nuisances().stream().map(Nuisance::kind).toList();
    }

    @Test
    void a_strong_station_on_the_image_counts_and_so_does_an_own_harmonic_on_a_station() {
        ChannelRanking image = ranking(Raster.ten(), ChannelRanking.When.DAY, local(1510e3));
        assertThat(kinds(image.weigh(600e3))).contains(Nuisance.Kind.IMAGE);
        assertThat(kinds(ranking(Raster.ten(), ChannelRanking.When.DAY, local(590e3))
                        .weigh(1500e3)))
                .containsExactly(Nuisance.Kind.IMAGE_ON_STATION);
        assertThat(kinds(image.weigh(750e3))).contains(Nuisance.Kind.OWN_HARMONIC_ON_STATION);
    }

    @Test
    void harmonics_in_restricted_bands_and_other_services_count() {
        RuleBook book = RuleBook.standard();
        List<Rule> restricted = book.restrictedBands(book.region("us").orElseThrow());
        ChannelRanking ranking =
                new ChannelRanking(Raster.ten(), List.of(), List.of(), restricted, ChannelRanking.When.BOTH);
        assertThat(kinds(ranking.weigh(1090e3)))
                .contains(Nuisance.Kind.OWN_HARMONIC_RESTRICTED, Nuisance.Kind.OWN_HARMONIC_IN_SERVICE);
        assertThat(kinds(ranking.weigh(950e3))).containsExactly(Nuisance.Kind.OWN_HARMONIC_IN_SERVICE);
        assertThat(kinds(ranking.weigh(1200e3))).isEmpty();
    }

    @Test
    void the_quietest_channel_comes_first_and_day_and_night_may_differ() {
        List<HeardStation> night = new ArrayList<>();
        for (double channel : Raster.nine().channels()) {
            if (channel != 1116e3) night.add(new HeardStation("sky wave", channel, false, true, Strength.FAIR));
        }
        ChannelRanking ranking =
                new ChannelRanking(Raster.nine(), night, List.of(455e3), List.of(), ChannelRanking.When.NIGHT);
        assertThat(ranking.ranked()).hasSize(120);
        assertThat(ranking.ranked().get(0).frequency()).isEqualTo(1116e3);
        ChannelRanking day =
                new ChannelRanking(Raster.nine(), night, List.of(455e3), List.of(), ChannelRanking.When.DAY);
        // By day only what harmonics and tweets do is left; of equals a channel on both rasters stands first.
        assertThat(day.ranked().get(0).onBothRasters()).isTrue();
        assertThat(day.ranked().get(0).dayPoints()).isZero();
        List<Double> points =
                ranking.ranked().stream().map(RankedChannel::nightPoints).toList();
        assertThat(points).isSorted();
    }

    @Test
    void a_box_of_crystals_finds_its_channels() {
        List<BoxPart> box = List.of(
                BoxPart.of("7.200", 7.2e6, BoxPart.Kind.CRYSTAL),
                BoxPart.of("16.000", 16e6, BoxPart.Kind.CRYSTAL),
                BoxPart.of("14.318", 14.31818e6, BoxPart.Kind.CRYSTAL));
        List<Landing> nine = new BoxSearch(box, List.of(2, 5, 8, 10), 1)
                .landings(Raster.nine().channels(), 1);
        for (int divider : List.of(5, 8, 10)) {
            double channel = 7.2e6 / divider;
            Landing landing = nine.stream()
                    .filter(l -> l.channel() == channel && l.second().isEmpty())
                    .findFirst()
                    .orElseThrow();
            ARITHMETIC.matches("7.2 MHz through " + divider + " misses the channel by (Hz)", 0, landing.error(), EXACT);
            assertThat(landing.dividers()).containsExactly(divider);
            assertThat(landing.endsEven()).isEqualTo(divider != 5);
            assertThat(landing.isReachable()).isTrue();
        }
        Landing mixed = new BoxSearch(box, List.of(), 0)
                .landings(List.of(1680e3), 2000).stream()
                        .filter(l -> l.mix() == Landing.Mix.DIFFERENCE)
                        .findFirst()
                        .orElseThrow();
        ARITHMETIC.matches("16 less 14.31818 MHz (kHz)", 1681.82, mixed.frequency() / 1e3, 1e-6);
        assertThat(mixed.recipe()).isEqualTo("16.000 − 14.318");
        assertThat(mixed.pullNeeded()).isCloseTo(-1820, within(EXACT));
        assertThat(mixed.pullRoom()).isCloseTo(6400, within(EXACT));
        assertThat(mixed.isReachable()).isTrue();
    }

    @Test
    void a_ceramic_resonator_is_pulled_onto_the_channel_where_its_room_allows() {
        List<BoxPart> box = List.of(BoxPart.of("976", 976e3, BoxPart.Kind.CERAMIC));
        Landing landing =
                new BoxSearch(box, List.of(), 0).landings(List.of(981e3), 0).get(0);
        ARITHMETIC.matches("976 kHz to 981 kHz, pull (Hz)", 5000, landing.pullNeeded(), EXACT);
        assertThat(landing.isReachable()).isTrue();
        assertThat(landing.whistle()).isEqualTo(5000);
        assertThat(new BoxSearch(List.of(BoxPart.of("x", 976e3, BoxPart.Kind.CRYSTAL)), List.of(), 0)
                        .landings(List.of(981e3), 100))
                .isEmpty();
        Landing off = new BoxSearch(List.of(BoxPart.of("1 MHz", 1e6, BoxPart.Kind.CRYSTAL)), List.of(), 0)
                .landings(List.of(999e3), 1500)
                .get(0);
        assertThat(off.whistle()).isEqualTo(1000);
        assertThat(off.isReachable()).isFalse();
    }

    @Test
    void landings_come_reachable_first_the_easiest_before_the_others() {
        List<BoxPart> box = List.of(
                BoxPart.of("4.9152", 4.9152e6, BoxPart.Kind.CRYSTAL),
                BoxPart.of("9.216", 9.216e6, BoxPart.Kind.CRYSTAL));
        List<Landing> all = new BoxSearch(box, List.of(2, 3, 4, 5, 8, 16), 2)
                .landings(Raster.nine().channels(), 500);
        assertThat(all).isNotEmpty();
        boolean missed = false;
        double before = 0;
        for (Landing landing : all) {
            if (!landing.isReachable() && !missed) {
                missed = true;
                before = 0;
            }
            assertThat(landing.isReachable()).isEqualTo(!missed);
            double order = missed ? Math.abs(landing.error()) : landing.stages();
            assertThat(order).isGreaterThanOrEqualTo(before);
            before = order;
            double product = landing.dividers().stream().reduce(1, (a, b) -> a * b);
            double base = landing.first().frequency()
                    + switch (landing.mix()) {
                        case ALONE -> 0;
                        case SUM -> landing.second().orElseThrow().frequency();
                        case DIFFERENCE -> -landing.second().orElseThrow().frequency();
                    };
            assertThat(base / product - landing.channel()).isCloseTo(landing.error(), within(EXACT));
            double pulled = landing.mix() == Landing.Mix.DIFFERENCE
                            && landing.second().orElseThrow().equals(landing.pulled())
                    ? -landing.pullNeeded()
                    : landing.pullNeeded();
            assertThat((base + pulled) / product).isCloseTo(landing.channel(), within(EXACT));
        }
        assertThat(all).anySatisfy(l -> {
            assertThat(l.channel()).isEqualTo(1152e3);
            assertThat(l.dividers()).containsExactly(8);
        });
        assertThatThrownBy(() -> new BoxSearch(box, List.of(1), 1)).hasMessageContaining("divides");
        assertThatThrownBy(() -> new HeardStation("ghost", 1e6, false, false, Strength.FAINT))
                .hasMessageContaining("neither");
    }
}
