/**
 * How a circuit behaves near its operating point on its own: the natural modes of the linearised equations G v + λ C v = 0,
 * which of them grow, and how much more loss the growing one could carry. A mode's numbers are polished by inverse iteration
 * until its residual is at rounding, so that a quartz resonator's growth of a millionth of its frequency is still right.
 *
 * <p>Start at {@link galena.engine.startup.Startup}.
 */
@NullMarked
package galena.engine.startup;

import org.jspecify.annotations.NullMarked;
