/**
 * What a packet says: {@link galena.packet.sheet.Findings} gathers what was computed of a build, {@link galena.packet.sheet.Sheets}
 * (open it first) puts it into words, tables and drawings, section by section. A section whose facts have not been computed or
 * entered is left out, not filled.
 */
@NullMarked
package galena.packet.sheet;

import org.jspecify.annotations.NullMarked;
