/**
 * The build folder and what can be computed from it: quantities, reading and checking, writing back, patterns, turning
 * a build into a circuit, and its prediction.
 */
@NullMarked
package galena.build;

import org.jspecify.annotations.NullMarked;
