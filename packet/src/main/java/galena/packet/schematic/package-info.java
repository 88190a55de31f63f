/**
 * A build drawn as a schematic: {@link galena.packet.schematic.Schematic} (open it first) places symbols and wires, {@link
 * galena.packet.schematic.SchematicSvg} writes them down, {@link galena.packet.schematic.Readability} judges the result.
 *
 * <p>Symbols follow the shapes of IEC 60617 and IEEE 315. Every net is one level line; parts hang from it or stand on it, the rail
 * is the top line, ground is a symbol at each part, signals run from left to right. Which part stands where is found by
 * annealing, after S. Kirkpatrick, C. D. Gelatt and M. P. Vecchi, Science 220 (1983) 671: the random stream is fixed, so that the
 * same build gives the same drawing, character for character.
 *
 * <p>Promised: what is joined in the drawing is what is joined in the build. Absent on purpose: strays and weak couplings, which
 * nobody solders, and any colour with a meaning.
 */
@NullMarked
package galena.packet.schematic;

import org.jspecify.annotations.NullMarked;
