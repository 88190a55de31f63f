/**
 * The bench log from the instruments' side: which figures of a report are readings of a build, in the log's own words. Where
 * the log lies and how it is written is {@code galena.build.folder}'s business.
 *
 * <p>Promised: a reading keeps its interval, its quantity, how it was taken and from which file; a limit or a missing figure is
 * never filed as a number. Open first: {@link galena.bench.log.Filing}.
 */
@NullMarked
package galena.bench.log;

import org.jspecify.annotations.NullMarked;
