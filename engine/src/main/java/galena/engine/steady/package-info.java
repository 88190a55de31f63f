/**
 * Periodic steady states, found directly: the orbit of a free-running circuit with its frequency among the unknowns ({@link
 * galena.engine.steady.SteadyOscillation}), and the response to periodic sources ({@link
 * galena.engine.steady.DrivenSteadyState}).
 *
 * <p>One period is cut into intervals. In each, x is a cubic that satisfies the equations at the three Radau points
 * (collocation; stiffly accurate, so algebraic unknowns and index-2 circuits are met too). All intervals and the frequency are
 * solved together by Newton's method. The linear systems fall apart into one sparse block system an interval and a small dense
 * one that closes the period and yields the Floquet multipliers on the way. The mesh follows the solution, and what comes out
 * has been compared with itself on a mesh of half the width: the difference is the error printed. Sources: U. M. Ascher, R. M.
 * M. Mattheij and R. D. Russell, Numerical Solution of Boundary Value Problems for ODEs, SIAM 1995, ch. 5 to 9; E. Hairer and
 * G. Wanner, Solving ODEs II, Springer 1996, IV.5 and VII.4 (from memory); R. Seydel, Practical Bifurcation and Stability
 * Analysis, 3rd ed., Springer 2010, ch. 7 (from memory).
 *
 * <p>Absent on purpose: integration in time until things settle.
 */
@NullMarked
package galena.engine.steady;

import org.jspecify.annotations.NullMarked;
