/**
 * What stands between Galena's words and a person's screen: which characters and colours can be shown ({@link
 * galena.desk.console.Terminal}, open it first), progress of long work, Ctrl-C, exit codes.
 *
 * <p>Promised: nothing is printed that the screen cannot show; colour appears on a terminal only, and never when {@code
 * NO_COLOR} is set; a pipe or file gets UTF-8. Absent on purpose: any knowledge of what is said.
 */
@NullMarked
package galena.desk.console;

import org.jspecify.annotations.NullMarked;
