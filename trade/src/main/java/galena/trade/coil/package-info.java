/**
 * Coils without a magnetic core: what a winding gives, what it loses, and how to arrive at one.
 *
 * <p>Open {@link Winding} first: every form answers it. Forms: {@link SingleLayer} (also the circular loop frame),
 * {@link Multilayer}, {@link FlatSpiral}, {@link RectangularFrame}. Rods and toroids are in {@code trade.ferrite} and
 * answer the same interface. Doors by question:
 *
 * <ul>
 *   <li>how many turns on this former, and what will it be like: {@link WindingDesign}
 *   <li>I wound it, it measures so much, how many turns off or on: {@link TurnsChange}
 *   <li>what inductance and self-capacitance do my resonances tell: {@link Resonance}
 * </ul>
 *
 * <p>Promised: closed forms and sums over real turns rather than fitted formulas; each form states its range and
 * refuses what lies outside with {@link galena.trade.wire.OutOfRange}. Helix pitch, leads, screens and the former's
 * dielectric are absent; figures whose range they spoil say so. Losses are solved turn by turn ({@link TurnField}),
 * and their interval is what that method shows against R. G. Medhurst's measured coils (Wireless Engineer 24, 1947).
 *
 * <p>SI throughout: henry, metre, ohm, farad, hertz; temperatures in degrees Celsius. Diameters of windings are to wire
 * centres. Fields are those of one ampere.
 */
@NullMarked
package galena.trade.coil;

import org.jspecify.annotations.NullMarked;
