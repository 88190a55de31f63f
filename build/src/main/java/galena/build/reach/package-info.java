/**
 * How far a build reaches: its aerial's moment from sizes and predicted current, the field that makes with distance, how that
 * stands to the rules of the region, and what sets hear of it.
 *
 * <p>Belongs here: turning parts of a build into radiators ({@link galena.build.reach.Aerial}), the intervals of everything that
 * follows, and the words beside them. The physics is {@code galena.trade}'s: fields, limits, noise. Promised: each figure has its
 * interval or says why there is none; a rule that is recalled and not read says so with the place to check; beside every verdict
 * stands that the regulator decides. Fields are rms. Absent on purpose: the sky wave, walls, and the ground under a loop.
 * Open first: {@link galena.build.reach.Reach}.
 */
@NullMarked
package galena.build.reach;

import org.jspecify.annotations.NullMarked;
