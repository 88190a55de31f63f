package galena.trade.noise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.proof.Kind;
import galena.proof.Published;
import galena.trade.field.ElectricDipole;
import galena.trade.field.FreeSpace;
import galena.trade.field.MagneticDipole;
import galena.trade.source.Basis;
import galena.trade.source.DataTable;
import galena.trade.source.PublishedRows;
import java.math.BigDecimal;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

class NoiseTest {
    @Test
    void agrees_with_every_published_constant_figure_and_field() {
        int compared = 0;
        for (DataTable.Row row : PublishedRows.of("noise.csv")) {
            Published.source("trade", PublishedRows.kind(row, Kind.STANDARD), row.text("source"))
                    .matches(
                            row.text("quantity") + ", " + row.text("environment") + " " + row.text("frequency_Hz")
                                    + " Hz " + row.text("note"),
                            row.required("value"),
                            found(row),
                            halfOfLastDigit(row));
            compared++;
        }
        assertThat(compared).isEqualTo(69);
    }

    /** The field rows were worked with the printed constant −95.5, Galena with −95.507. */
    private static double halfOfLastDigit(DataTable.Row row) {
        double half = new BigDecimal(row.text("value")).ulp().doubleValue() / 2 * (1 + 1e-9);
        return row.text("quantity").equals("En") ? half + 0.007 : half;
    }

    private static double found(DataTable.Row row) {
        String quantity = row.text("quantity");
        if (quantity.startsWith("En constant, short")) return NoiseField.monopoleConstant();
        if (quantity.startsWith("En constant, half")) return NoiseField.dipoleConstant();
        if (quantity.equals("k T0")) return NoiseField.thermalDensity();
        Environment environment =
                Environment.valueOf(row.text("environment").replace(' ', '_').toUpperCase(Locale.ROOT));
        return switch (quantity) {
            case "c" -> environment.median(1e6);
            case "d" -> environment.median(1e6) - environment.median(10e6);
            case "Fam" -> environment.median(row.required("frequency_Hz"));
            case "En" -> {
                double f = row.required("frequency_Hz");
                double bandwidth = Double.parseDouble(
                        row.text("formula").replaceAll(".*b=", "").replaceAll(" Hz.*", ""));
                NoiseField field = NoiseField.of(environment, f, bandwidth, 0);
                yield 20 * Math.log10(field.median() * 1e6);
            }
            default -> quantity.startsWith("Du") ? environment.upperDecile() : environment.lowerDecile();
        };
    }

    @Test
    void deciles_and_an_indoor_excess_move_the_field_by_decibels() {
        NoiseField outdoors = NoiseField.of(Environment.RESIDENTIAL, 1e6, 9000, 0);
        NoiseField indoors = NoiseField.of(Environment.RESIDENTIAL, 1e6, 9000, 20);
        assertThat(indoors.median() / outdoors.median()).isCloseTo(10, within(1e-9));
        assertThat(20 * Math.log10(outdoors.high() / outdoors.median())).isCloseTo(10.6, within(1e-9));
        assertThat(20 * Math.log10(outdoors.median() / outdoors.low())).isCloseTo(5.3, within(1e-9));
        assertThatThrownBy(() -> Environment.CITY.median(100e3)).hasMessageContaining("0.3 to 250 MHz");
        assertThatThrownBy(() -> NoiseField.of(Environment.GALACTIC, 1e6, 9000, 0))
                .hasMessageContaining("galactic");
    }

    /** Envelope of a modulated carrier in band noise, drawn at random: the law is the textbook's, the draw is not ours. */
    @Test
    void audio_signal_to_noise_is_that_of_an_envelope_detector() {
        Random random = new Random(4);
        double carrier = 1, noise = 0.02, depth = 0.8;
        int n = 200_000;
        double signalPower = 0, noisePower = 0;
        for (int i = 0; i < n; i++) {
            double audio = Math.cos(2 * Math.PI * i / 50.0);
            double peak = Math.sqrt(2) * carrier;
            double inPhase = peak * (1 + depth * audio) + noise * random.nextGaussian();
            double envelope = Math.hypot(inPhase, noise * random.nextGaussian());
            double wanted = peak * depth * audio;
            signalPower += wanted * wanted / n;
            noisePower += Math.pow(envelope - peak - wanted, 2) / n;
        }
        ReceiverClass silent = new ReceiverClass(
                "silent",
                "silent",
                ReceiverClass.Pickup.ELECTRIC,
                0,
                0,
                9000,
                ReceiverClass.standard().get(0).provenance());
        Listening listening = new Listening(new ElectricDipole(1, 1e6, true), silent, NoiseField.measured(0.02), depth);
        double distance = listening.distanceFor(20 * Math.log10(depth / 0.02)).orElseThrow();
        Listening.Heard heard = listening.at(distance);
        assertThat(heard.field()).isCloseTo(1, within(1e-6));
        // At 10 % envelope trough the quadrature noise adds a little: 0.1 dB covers it and the draw.
        Published.source("trade", Kind.CLOSED_FORM, "envelope detection far above threshold, S/N = m²·E²/En²")
                .matches(
                        "audio signal-to-noise (dB)",
                        10 * Math.log10(signalPower / noisePower),
                        heard.signalToNoise(),
                        0.1);
    }

    @Test
    void the_distance_found_is_where_pleasant_listening_ends_for_every_class() {
        for (ReceiverClass receiver : ReceiverClass.standard()) {
            assertThat(receiver.provenance().basis()).isIn(Basis.MEMORY, Basis.COMMON_PRACTICE);
            NoiseField noise = NoiseField.of(Environment.RESIDENTIAL, 1e6, receiver.bandwidth(), 10);
            Listening listening = new Listening(new MagneticDipole(1e-2, 1e6), receiver, noise, 0.8);
            double edge = listening.pleasantDistance().orElseThrow();
            assertThat(listening.at(edge * 0.999).quality()).isEqualTo(Listening.Quality.PLEASANT);
            assertThat(listening.at(edge * 1.001).quality()).isNotEqualTo(Listening.Quality.PLEASANT);
            assertThat(listening.limit(edge * 0.9)).isEmpty();
            assertThat(listening.limit(edge * 1.1)).isPresent();
        }
    }

    @Test
    void a_rod_takes_up_the_magnetic_field_and_a_wire_the_electric_one() {
        MagneticDipole coil = new MagneticDipole(1e-3, 1e6);
        NoiseField quiet = NoiseField.measured(0);
        double rod = new Listening(coil, ReceiverClass.named("rod_set"), quiet, 0.5)
                .at(3)
                .field();
        double wire = new Listening(coil, ReceiverClass.named("wire_fed_table_set"), quiet, 0.5)
                .at(3)
                .field();
        assertThat(rod).isCloseTo(coil.onAxis(3).greatestH() * FreeSpace.IMPEDANCE, within(1e-12));
        assertThat(wire).isCloseTo(coil.broadside(3).greatestE(), within(1e-15));
        assertThat(rod).isGreaterThan(20 * wire);
    }

    @Test
    void too_weak_a_carrier_plays_nowhere_and_says_so() {
        Listening weak = new Listening(
                new MagneticDipole(1e-12, 1e6), ReceiverClass.named("crystal_set"), NoiseField.measured(1e-6), 0.8);
        assertThat(weak.pleasantDistance()).isEmpty();
        assertThat(weak.at(3).quality()).isEqualTo(Listening.Quality.TOO_WEAK);
        assertThat(weak.limit(3)).hasValue(Listening.Limit.LEAST_FIELD);
        assertThatThrownBy(() -> ReceiverClass.named("toaster")).hasMessageContaining("rod_set");
        assertThatThrownBy(() -> new Listening(weak.transmitter(), weak.receiver(), weak.noise(), 1.3))
                .hasMessageContaining("depth");
    }
}
