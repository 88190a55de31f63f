/**
 * Steady oscillations that a slow source modulates: what comes out is the oscillation's frequency, and amplitude and phase of every
 * harmonic of every net and branch, over one period of the slow source. To first order in the source's level by {@link
 * galena.engine.envelope.Sidebands}, at any level by {@link galena.engine.envelope.DynamicEnvelope}: open that first.
 *
 * <p>Promised: memory of any length, the slow source's and the circuit's own, is met exactly and costs no time, because the slow
 * period is closed as a boundary-value problem; the ratio of the two frequencies is not taken for small. The error printed is
 * the difference to half the slow points.
 *
 * <p>The first harmonic's departure Re(z e^(jωτ)) has z complex; amplitudes are peak.
 */
@NullMarked
package galena.engine.envelope;

import org.jspecify.annotations.NullMarked;
