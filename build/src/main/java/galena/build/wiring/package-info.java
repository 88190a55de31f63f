/**
 * Turning a build and its overlay into the engine's circuit, and the engine's findings about its structure back into places
 * of the file.
 *
 * <p>Promised: every engine part can be traced to the path in the file that it comes from; helpers that one entry needs (a
 * source's resistance, a diode's series resistance) are named after it with a dot. Values are the typical ones; spread is
 * laid over elsewhere. A fault of structure is a problem with its place and remedy, all of them at once; a curious but
 * solvable structure is a warning.
 *
 * <p>Absent on purpose: solving, and anything that a circuit's solution would be needed for. Open {@link
 * galena.build.wiring.CircuitOf} first.
 */
@NullMarked
package galena.build.wiring;

import org.jspecify.annotations.NullMarked;
