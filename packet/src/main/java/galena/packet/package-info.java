/**
 * What is published: schematic, charts, sheets, parts list.
 */
@NullMarked
package galena.packet;

import org.jspecify.annotations.NullMarked;
