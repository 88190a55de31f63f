/**
 * A circuit: parts, the nets that join them, one temperature; and the check of its structure before any equation is
 * written. Immutable. What comes out of {@link galena.engine.circuit.Circuit#of} has unique names, a ground, and couplings
 * that name coils; what {@link galena.engine.circuit.Structure#faults} finds beyond that is listed with parts and nets, all
 * at once.
 *
 * <p>Sign conventions of the whole engine: current into a pin is positive; a two-pin part's voltage is first pin minus
 * second; amplitudes are peak. Absent on purpose: values' spelling, files, drawings. Start at {@link
 * galena.engine.circuit.Circuit}.
 */
@NullMarked
package galena.engine.circuit;

import org.jspecify.annotations.NullMarked;
