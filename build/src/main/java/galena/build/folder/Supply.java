package galena.build.folder;

import galena.build.quantity.Quantity;
import galena.build.source.Place;
import java.util.Optional;

/** What feeds the build, and the nets it stands between. */
public sealed interface Supply {
    /** The name of the supply among the parts of a circuit; no part may have it. */
    String NAME = "supply";

    /** The net at the positive end. */
    String plus();

    /** The net at the negative end. */
    String minus();

    Place place();

    /** What is left of the mains on it. */
    default Optional<Ripple> ripple() {
        return Optional.empty();
    }

    /**
     * Ripple of a supply that the mains feed, open circuit, peak.
     *
     * @param mains frequency
     * @param once peak at it
     * @param twice peak at twice it, as behind a full-wave rectifier
     */
    record Ripple(Quantity mains, Optional<Quantity> once, Optional<Quantity> twice) {}

    /**
     * A battery by its name.
     *
     * @param type as written: {@code 6xAA-NiMH}
     * @param charge state of charge, 0..1
     */
    record OfBattery(String type, double charge, String plus, String minus, Place place) implements Supply {}

    /**
     * A voltage behind a resistance.
     *
     * @param voltage open circuit
     * @param resistance inside; 0 Ω for an ideal supply
     * @param capacity if it is known how long it lasts
     * @param ripple if it is fed by the mains
     */
    record OfVoltage(
            Quantity voltage,
            Quantity resistance,
            Optional<Quantity> capacity,
            Optional<Ripple> ripple,
            String plus,
            String minus,
            Place place)
            implements Supply {}
}
