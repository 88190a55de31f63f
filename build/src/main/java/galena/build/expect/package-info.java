/**
 * What a builder will read and see on the bench: at every test point through its probe, at every adjustment from stop to stop, and
 * what must be kept away. {@link galena.build.expect.Expected} asks the predictions below for it in one go. Absent on purpose: words.
 */
@NullMarked
package galena.build.expect;

import org.jspecify.annotations.NullMarked;
