/**
 * From samples to a carrier's slow amplitude and phase: finding the strongest line, mixing it down, and following its
 * phase past overmodulation. Sign convention: z(t) = E(t) exp(jφ(t)), with x(t) = Re z(t) exp(j2πf0 t) for a real
 * capture and z(t) exp(j2πf0 t) for a complex one.
 * Open first: {@link galena.signal.carrier.Baseband}.
 */
@NullMarked
package galena.signal.carrier;

import org.jspecify.annotations.NullMarked;
