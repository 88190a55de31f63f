/**
 * What a builder may have got wrong, and what would betray it. {@link galena.build.fault.Faults} lists a build's plausible
 * faults as changed circuits: parts open, bridged, of the wrong decade, exchanged, coils turned round, devices dead or weak,
 * a flat battery.
 *
 * <p>A fault changes a circuit and nothing else, so it may be laid on any circuit made from the same build, calibrated or turned
 * or drawn from the spread. What is broken off still leaks 1 GΩ, as boards do (common
 * practice), so that no net is left without a voltage. Absent on purpose: faults of judgement (a wrong pattern, a poor layout),
 * two faults at once, and words for a page.
 */
@NullMarked
package galena.build.fault;

import org.jspecify.annotations.NullMarked;
