/**
 * The operating point: the voltages and currents at which nothing changes while sources rest. {@link
 * galena.engine.operating.OperatingPointLadder} tries its methods in a stated order and says which one held. An operating
 * point that comes out satisfies Kirchhoff's laws to rounding; an oscillator's is unstable and is found all the same.
 */
@NullMarked
package galena.engine.operating;

import org.jspecify.annotations.NullMarked;
