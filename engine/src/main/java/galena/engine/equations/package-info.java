/**
 * The charge-conserving nodal equations of a circuit: d/dt q(x) + i(x) = s(t), with analytic derivatives C = ∂q/∂x and G =
 * ∂i/∂x on one fixed sparse pattern (C. W. Ho, A. E. Ruehli and P. A. Brennan, IEEE Trans. Circuits Syst. CAS-22 (1975)
 * 504). Unknowns are the net voltages, then the currents of coils, resonators and voltage sources. Row k of a net says that
 * the currents leaving it sum to zero; the row of a coil is its flux equation; that of a source its voltage.
 *
 * <p>Index 0 of every vector is ground and holds zero; entry 0 of the pattern takes what would fall on ground's row or column.
 * One evaluation allocates nothing. Absent on purpose: solving. Start at {@link galena.engine.equations.Equations}.
 */
@NullMarked
package galena.engine.equations;

import org.jspecify.annotations.NullMarked;
