/**
 * What a builder may have got wrong, and what would betray it. {@link galena.build.fault.Faults} lists a build's plausible
 * faults as changed circuits: parts open, bridged, of the wrong decade, exchanged, coils turned round, devices dead or weak,
 * a flat battery. {@link galena.build.fault.FaultStudy} solves each and says what the builder would read; from that {@link
 * galena.build.fault.FaultTree} orders the readings of each {@link galena.build.fault.Stage} so that every question leaves as little
 * in doubt as it can.
 *
 * <p>A fault changes a circuit and nothing else, so it may be laid on any circuit made from the same build, calibrated or turned
 * or drawn from the spread. What is broken off still leaks 1 GΩ, as boards do (common
 * practice), so that no net is left without a voltage. Promised: every reading of a faulty copy is solved for,
 * never guessed; one that could not be solved says so and takes no part in a tree. Absent on purpose: faults of judgement (a wrong pattern, a poor layout),
 * two faults at once, and words for a page.
 */
@NullMarked
package galena.build.fault;

import org.jspecify.annotations.NullMarked;
