/**
 * Pictures in time of a test point, as an instrument would show it: how the oscillation starts, its carrier, and the carrier
 * modulated by a tone. The probe is connected while they are computed, and loads the circuit as the real one does.
 *
 * <p>Open {@link galena.build.picture.TimePictures} first. Absent on purpose: drawing.
 */
@NullMarked
package galena.build.picture;

import org.jspecify.annotations.NullMarked;
