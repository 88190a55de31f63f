/**
 * A receiver with an envelope detector, as it works on the complex envelope of a carrier: what a superheterodyne set's
 * intermediate-frequency filter, detector and gain control make of a transmission. The carrier's own cycles are gone; I and Q are
 * samples of the envelope, 1 for the unmodulated carrier.
 *
 * <p>Pure: no files, no clock, noise from a stated seed. Block methods allocate nothing. Not here: fields, distances and classes of
 * set, which are the trade's. Open first: {@link galena.signal.receiver.Receiver}.
 */
@NullMarked
package galena.signal.receiver;

import org.jspecify.annotations.NullMarked;
