/**
 * How a build wanders after it is switched on: carrier and depth as the battery empties and as it warms, by solving the circuit at
 * every step of the run; and when that takes it off its channel, out of its depth or to a stop. Start at {@link
 * galena.build.drift.Drift}. Absent on purpose: how warm a box gets (the builder says that) and ageing.
 */
@NullMarked
package galena.build.drift;

import org.jspecify.annotations.NullMarked;
