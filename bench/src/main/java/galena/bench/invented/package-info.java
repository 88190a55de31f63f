/**
 * A bench for the demo: captures and readings that nobody ever took. They are computed by the prediction itself from a changed
 * copy of the demo build, and then spoilt as a plain 8-bit scope, a counter and a meter would spoil them; so that measuring,
 * noting and comparing can be tried without an instrument, and the answer is known.
 *
 * <p>Promised: every file and every line of the log says that it is invented; the same bytes every time. Nothing here is for
 * tests of truth, since the prediction would be held against itself. Open first: {@link galena.bench.invented.InventedBench}.
 */
@NullMarked
package galena.bench.invented;

import org.jspecify.annotations.NullMarked;
