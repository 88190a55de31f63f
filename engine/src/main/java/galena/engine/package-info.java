/**
 * Circuits and their answers: parts, charge-conserving nodal equations, and the solvers for operating point, startup,
 * response and steady oscillation. Knows no radio, no files and no other module of Galena.
 */
@NullMarked
package galena.engine;

import org.jspecify.annotations.NullMarked;
