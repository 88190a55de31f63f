package galena.trade.coil;

import galena.trade.wire.Wire;

/** A wound coil of any form. Low frequency means uniform current in the wire. */
public interface Winding {
    double turns();

    Wire wire();

    /**
     * Inductance without the effect of self-capacitance (H).
     *
     * @param frequency Hz, 0 for low frequency: the field inside the wire shrinks with skin depth
     * @param celsius temperature of the wire, for its skin depth
     */
    double inductance(double frequency, double celsius);

    /** Inductance at low frequency (H). */
    default double inductance() {
        return inductance(0, 20);
    }

    /**
     * What eddy currents in neighbouring turns take from {@link #inductance}, zero or less (H): nothing in litz,
     * several per cent in packed layers of thick wire. Takes far longer to reckon.
     *
     * @param frequency Hz, more than 0
     * @param celsius temperature of the wire
     * @throws galena.trade.wire.OutOfRange when the coil has more than {@link TurnField#MOST_TURNS} turns
     */
    double inductanceShift(double frequency, double celsius);

    /** How far {@link #inductance} may be off through the formula alone, as a fraction. */
    double modelError();

    /** Wire on the coil, without leads (m). */
    double wireLength();

    /** Space taken along the axis, or from inner to outer edge of a flat coil, or round the hole of a toroid (m). */
    double windingLength();

    int layers();

    /** Resistance to direct current (Ω). */
    default double dcResistance(double celsius) {
        return wireLength() * wire().resistancePerMetre(celsius);
    }

    /**
     * Where the series resistance comes from at one frequency.
     *
     * @param frequency Hz, more than 0
     * @param celsius temperature of wire and core
     * @throws galena.trade.wire.OutOfRange when the coil has more turns than can be solved
     */
    Losses losses(double frequency, double celsius);

    SelfCapacitance selfCapacitance();
}
