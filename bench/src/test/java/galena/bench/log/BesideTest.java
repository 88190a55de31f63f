package galena.bench.log;

import static org.assertj.core.api.Assertions.assertThat;

import galena.build.figure.Figure;
import galena.build.folder.Circumstances;
import galena.build.folder.LogEntry;
import galena.build.folder.LogEntry.What;
import galena.build.quantity.Quantity;
import galena.build.source.Place;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** When a reading and a prediction can both be right. */
class BesideTest {
    private static Beside beside(What what, double read, double half, double low, double high) {
        LogEntry reading = new LogEntry(
                what,
                Quantity.of(read, what.unit()),
                Optional.of(Quantity.of(half, what.unit())),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Circumstances.UNKNOWN,
                new Place("bench/log.yaml", 1, 1));
        return new Beside(
                reading, new Figure.Known((low + high) / 2, what.unit(), low, high, "predicted", what.inWords(), ""));
    }

    @Test
    void they_agree_where_their_intervals_meet() {
        assertThat(beside(What.CARRIER, 987e3, 1e3, 988e3, 990e3).agrees()).contains(true);
        assertThat(beside(What.CARRIER, 986.9e3, 1e3, 988e3, 990e3).agrees()).contains(false);
        assertThat(beside(What.CARRIER, 991e3, 1e3, 988e3, 990e3).agrees()).contains(true);
        assertThat(beside(What.CARRIER, 991.1e3, 1e3, 988e3, 990e3).agrees()).contains(false);
        assertThat(beside(What.SECOND_HARMONIC, -38, 1, -50, -40).agrees()).contains(false);
    }

    @Test
    void modulation_is_not_judged_because_tolerances_are_not_in_its_prediction() {
        assertThat(beside(What.NEGATIVE_PEAK, 0.8, 0.01, 0.5, 0.51).agrees()).isEmpty();
    }
}
