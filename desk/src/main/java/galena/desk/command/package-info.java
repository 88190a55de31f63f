/**
 * The commands, one class each, named for the steps of a build's way from intent to packet. Open {@link
 * galena.desk.command.PredictCommand} first: it parses, calls one method and hands the record to a writer.
 *
 * <p>Absent on purpose: anything that computes, and anything that formats.
 */
@NullMarked
package galena.desk.command;

import org.jspecify.annotations.NullMarked;
