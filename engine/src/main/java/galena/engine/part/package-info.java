/**
 * The parts of a circuit as immutable records in SI units, and nothing of how they are solved. A part names the nets that
 * its pins join; {@link galena.engine.circuit.Circuit#GROUND} is the reference. Values are those at 25 °C; each part's
 * temperature law is stated at its record and applied when the equations are assembled ({@link galena.engine.law}).
 *
 * <p>Every constructor refuses values that no such part can have with an {@link java.lang.IllegalArgumentException} that
 * names the part, the value and the allowed range. Start at {@link galena.engine.part.Part}.
 */
@NullMarked
package galena.engine.part;

import org.jspecify.annotations.NullMarked;
