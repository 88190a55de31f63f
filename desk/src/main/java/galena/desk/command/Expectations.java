package galena.desk.command;

import galena.bench.measure.Expected;
import galena.bench.measure.Instrument;
import galena.bench.measure.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that say what the builder knows of the signal and the instrument. */
final class Expectations {
    /** Quantities by the words of the option. */
    enum Of {
        PROBE(Quantity.PROBE_VOLTAGE),
        TANK(Quantity.TANK_VOLTAGE),
        COIL(Quantity.COIL_CURRENT),
        FIELD(Quantity.FIELD),
        RECEIVER(Quantity.AFTER_RECEIVER);

        private final Quantity quantity;

        Of(Quantity quantity) {
            this.quantity = quantity;
        }
    }

    @Option(
            names = "--carrier",
            paramLabel = "FREQUENCY",
            description =
                    "Expected carrier: tells aliasing and a wrong time base. With --into, the intent's unless said.")
    private Optional<String> carrier = Optional.empty();

    @Option(names = "--mains", paramLabel = "FREQUENCY", description = "Frequency of the mains: 50 Hz or 60 Hz.")
    private Optional<String> mains = Optional.empty();

    @Option(
            names = "--unmodulated",
            paramLabel = "VOLTS",
            description = "Peak of the carrier without modulation: peaks and carrier shift then refer to it.")
    private Optional<String> unmodulated = Optional.empty();

    @Option(
            names = "--of",
            paramLabel = "QUANTITY",
            description = "What was captured: probe, tank, coil (its current), field or receiver (after its filter).")
    private Optional<String> of = Optional.empty();

    @Option(
            names = "--clock",
            paramLabel = "PPM",
            description = "Limit of the time base's error, parts per million; 50 unless said.")
    private Optional<Double> clock = Optional.empty();

    @Option(
            names = "--gain",
            paramLabel = "PERCENT",
            description = "Limit of the vertical gain's error with the probe; 3 %% unless said.")
    private Optional<String> gain = Optional.empty();

    @Option(
            names = "--bend",
            paramLabel = "PERCENT",
            description = "How far the vertical scale is from straight; 0.5 %% unless said.")
    private Optional<String> bend = Optional.empty();

    @Option(
            names = "--trust",
            paramLabel = "LEVEL",
            description = "Harmonics below this may be the instrument's own; -50 dB unless said.")
    private Optional<String> trust = Optional.empty();

    /** @param intended the carrier of the build's intent, taken where none is stated (Hz) */
    Expected expected(Optional<Double> intended) throws BadInputException {
        Expected known = Expected.nothing().withInstrument(instrument());
        if (carrier.isPresent()) known = known.withCarrier(Written.positive("--carrier", carrier.get(), Unit.HERTZ));
        else if (intended.isPresent()) known = known.withCarrier(intended.get());
        if (mains.isPresent()) known = known.withMains(mains(mains.get()));
        if (unmodulated.isPresent())
            known = known.withUnmodulated(Written.positive("--unmodulated", unmodulated.get(), Unit.VOLT));
        if (of.isPresent()) known = known.withQuantity(Written.word("--of", of.get(), Of.class).quantity);
        return known;
    }

    boolean statesCarrier() {
        return carrier.isPresent();
    }

    private static double mains(String text) throws BadInputException {
        double mains = Written.positive("--mains", text, Unit.HERTZ);
        if (mains >= 10 && mains <= 1000) return mains;
        throw Written.bad("--mains", '"' + text + "\" is no mains frequency", "It lies between 10 Hz and 1 kHz.");
    }

    private Instrument instrument() throws BadInputException {
        Instrument usual = Instrument.USUAL;
        double ppm = clock.orElse(usual.clockPpm());
        if (!(ppm >= 0 && ppm < 1e6))
            throw Written.bad("--clock", ppm + " is out of range", "It is 0 or more, in ppm.");
        double level = trust.isPresent()
                ? Written.quantity("--trust", trust.get(), Unit.DECIBEL).value()
                : usual.trustDbc();
        if (!(level < 0)) throw Written.bad("--trust", level + " dB is not below the carrier", "It lies below 0 dB.");
        return new Instrument(
                ppm, percent("--gain", gain, usual.gainPercent()), percent("--bend", bend, usual.bendPercent()), level);
    }

    private static double percent(String option, Optional<String> text, double otherwise) throws BadInputException {
        if (text.isEmpty()) return otherwise;
        double percent =
                100 * Written.quantity(option, text.get(), Unit.FRACTION).value();
        if (percent >= 0 && percent <= 100) return percent;
        throw Written.bad(option, '"' + text.get() + "\" is out of range", "It is 0 % to 100 %.");
    }
}
