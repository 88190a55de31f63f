/**
 * Coils with a ferrite core: rods with a winding anywhere along them, and toroids.
 *
 * <p>Open {@link RodCoil} first. The rod is solved, not looked up: {@link Rod} holds the magnetostatic problem of a
 * round bar, from which inductance, core loss, moment and the field across the turns all follow for any place and
 * length of the winding. Doors by question:
 *
 * <ul>
 *   <li>design on a rod or ring: {@link RodFormer}, {@link ToroidFormer} given to {@code coil.WindingDesign}
 *   <li>what is this unknown rod or ring, from one trial winding: {@link CoreTrial}
 *   <li>where on the rod must the winding stand: {@link Slide}
 * </ul>
 *
 * <p>Promised: answers stay inside the stated ranges or {@link galena.trade.wire.OutOfRange} is thrown. Absent:
 * tubes, flat bars, several windings on one rod, saturation, self-capacitance on ferrite (its permittivity is not in
 * any table held). Grades in {@link Material#table} are recalled and marked so.
 */
@NullMarked
package galena.trade.ferrite;

import org.jspecify.annotations.NullMarked;
