/**
 * The notebook page: what one opened build is while somebody works on it. {@link galena.desk.page.Notebook} (open it first) holds the
 * build, what is laid over it, the carrier kept solved, the history of edits and the long work; {@link galena.desk.page.PageAnswers}
 * answers the page's requests out of it. {@link galena.desk.page.Shelf} stands before them: the builds of one folder, of which one is
 * shown, and the beginning of the first.
 *
 * <p>Promised: what is shown was solved, or is marked as pending or stale; an edit is on the disk before it is acknowledged; whatever
 * another program wrote is taken over or asked about, never overwritten; nothing outside the build folder is read or written.
 * Absent on purpose: physics, and the transport ({@code galena.desk.server}).
 */
@NullMarked
package galena.desk.page;

import org.jspecify.annotations.NullMarked;
