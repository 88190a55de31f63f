/**
 * Linear algebra made for collocation on a small sparse circuit: LU of a matrix whose every entry is a 3-by-3 block, one row
 * of blocks for each unknown and one place in a block for each stage of the method. The elimination order is found once
 * ({@link galena.engine.linear.BlockPlan}), the numbers many times ({@link galena.engine.linear.BlockLu}); what is dense goes
 * to a library.
 */
@NullMarked
package galena.engine.linear;

import org.jspecify.annotations.NullMarked;
