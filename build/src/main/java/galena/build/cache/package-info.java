/**
 * Results kept between runs in a place of the build folder that is safe to delete. {@link galena.build.cache.Cache} is the door.
 *
 * <p>Promised: an entry is used only where everything it was computed from is the same, the program included; one that can't be read
 * or doesn't fit is passed over and made again; a folder that can't be written to costs time and nothing else. Records are written
 * component by component, so that what is read back equals what was written. Absent on purpose: anything that a builder wrote.
 */
@NullMarked
package galena.build.cache;

import org.jspecify.annotations.NullMarked;
