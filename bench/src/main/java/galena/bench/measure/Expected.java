package galena.bench.measure;

import java.util.OptionalDouble;

/**
 * What the builder knows before measuring; each may be empty.
 *
 * @param carrier expected (Hz)
 * @param mains frequency of the mains (Hz)
 * @param unmodulated peak of the carrier without modulation (unit of the capture)
 * @param quantity that the capture is of
 * @param instrument that took it
 */
public record Expected(
        OptionalDouble carrier,
        OptionalDouble mains,
        OptionalDouble unmodulated,
        Quantity quantity,
        Instrument instrument) {
    public Expected {
        if (carrier.isPresent() && !(carrier.getAsDouble() > 0 && carrier.getAsDouble() < 1e9)) {
            throw new IllegalArgumentException("The expected carrier must be a positive frequency in hertz");
        }
        if (mains.isPresent() && !(mains.getAsDouble() >= 10 && mains.getAsDouble() <= 1000)) {
            throw new IllegalArgumentException("The mains frequency must lie between 10 and 1000 Hz");
        }
        if (unmodulated.isPresent() && !(unmodulated.getAsDouble() > 0)) {
            throw new IllegalArgumentException("The unmodulated carrier must be positive");
        }
    }

    /** Nothing is known. */
    public static Expected nothing() {
        return new Expected(
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Quantity.PROBE_VOLTAGE,
                Instrument.USUAL);
    }

    /** @param hertz expected */
    public Expected withCarrier(double hertz) {
        return new Expected(OptionalDouble.of(hertz), mains, unmodulated, quantity, instrument);
    }

    /** @param hertz of the mains */
    public Expected withMains(double hertz) {
        return new Expected(carrier, OptionalDouble.of(hertz), unmodulated, quantity, instrument);
    }

    /** @param peak of the carrier without modulation, unit of the capture */
    public Expected withUnmodulated(double peak) {
        return new Expected(carrier, mains, OptionalDouble.of(peak), quantity, instrument);
    }

    public Expected withQuantity(Quantity stated) {
        return new Expected(carrier, mains, unmodulated, stated, instrument);
    }

    public Expected withInstrument(Instrument stated) {
        return new Expected(carrier, mains, unmodulated, quantity, stated);
    }
}
