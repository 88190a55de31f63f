/**
 * How a build is modulated: a report of what its programme does to the carrier, what sets the audio response, where swing comes from
 * and which cure is worth most, each cure tried by solving the changed circuit ({@link galena.build.depth.ModulationReport}); and
 * the audio level and bias that give the deepest clean modulation ({@link galena.build.depth.Deepen}). Open first: {@link
 * galena.build.depth.Modulate}.
 */
@NullMarked
package galena.build.depth;

import org.jspecify.annotations.NullMarked;
