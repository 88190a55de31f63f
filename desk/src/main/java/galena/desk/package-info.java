/**
 * The way in. {@link galena.desk.Galena} (open it first) knows the list of commands, the exit codes and how a failure is shown,
 * and nothing else; each command is thin and lives in {@code galena.desk.command}.
 *
 * <p>Promised: what a builder wrote wrongly is shown with place and remedy and never with a stack; a fault of Galena is shown
 * with its stack and called a fault. Absent on purpose: physics, files of a build.
 */
@NullMarked
package galena.desk;

import org.jspecify.annotations.NullMarked;
