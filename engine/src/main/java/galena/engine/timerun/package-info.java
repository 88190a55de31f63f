/**
 * Waiting and watching: the equations integrated in time from given charges, step by step. The answers of this engine do not come
 * from here; it is for pictures of what happens at switch-on, and for confirming what the direct answers say of orbits that do
 * not settle. The same three-stage Radau method as in {@link galena.engine.steady}, one step at a time, with the step chosen so that
 * the cubic of one step foretells the next to the tolerance. Start at {@link galena.engine.timerun.TimeRun}.
 */
@NullMarked
package galena.engine.timerun;

import org.jspecify.annotations.NullMarked;
