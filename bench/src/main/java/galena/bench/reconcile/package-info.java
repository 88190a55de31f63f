/**
 * Why a build differs from its prediction: everything unknown of it fitted to all readings of the bench log at once, with what the
 * readings leave open, what they can't tell apart, which reading or which part is wrong, and what to read next.
 *
 * <p>One law throughout: every unknown is standard normal on its own scale before the readings, every reading errs normally about what
 * the circuit's own equations say under its circumstances. The fit is the most probable explanation by Gauss and Newton on exact
 * derivatives; intervals come from a random walk over the explanations that remain; hypotheses (a wrong part, a wrong reading) are
 * weighed by the probability that each gives to what was read. Sources: A. Tarantola, Inverse Problem Theory, SIAM 2005, ch. 3 (from
 * memory); W. Baarda, A Testing Procedure for Use in Geodetic Networks, 1968, for the reading that does not fit (from memory); G. E.
 * P. Box and G. C. Tiao, Biometrika 55 (1968) 119, for a bad reading as one with a larger error (from memory).
 *
 * <p>Open first: {@link galena.bench.reconcile.Reconcile}.
 */
@NullMarked
package galena.bench.reconcile;

import org.jspecify.annotations.NullMarked;
