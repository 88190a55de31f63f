/**
 * Commands, local server and page. Thin: a command parses, calls one method of a lower module and hands a record to a
 * writer.
 */
@NullMarked
package galena.desk;

import org.jspecify.annotations.NullMarked;
