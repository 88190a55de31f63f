/**
 * What spoils a build: how far each stray, lead, stray coupling, part, degree and volt moves the carrier and the other figures,
 * exactly (by adjoint, from one linear solve a figure), at fixed trim and after re-trimming, and what it means for layout and
 * choice of parts. Start at {@link galena.build.guard.Guard}.
 */
@NullMarked
package galena.build.guard;

import org.jspecify.annotations.NullMarked;
