/**
 * The trade's own numbers: coils, aerials, fields, limits, noise, devices, batteries, preferred values. Pure functions
 * and data with sources; nothing here knows a circuit or a build.
 */
@NullMarked
package galena.trade;

import org.jspecify.annotations.NullMarked;
