/**
 * From a capture to figures that can be held against a prediction: each with its 95 % interval, the quantity it is of and
 * how it was taken; what is wrong with the capture; and one plain sentence above all that. Also the small sums of the
 * bench: coil and stray from two frequencies, Q from a width or a ring-down, depth from a screen, hum from four questions.
 *
 * <p>Promised: a figure that cannot be had says why; nothing is printed finer than its interval; an instrument's own
 * errors are joined to the interval where they are known, and named where they are not. Absent: the definitions of the
 * figures ({@code galena.signal}) and the reading of files ({@code galena.bench.capture}).
 *
 * <p>Open first: {@link galena.bench.measure.Measure}.
 */
@NullMarked
package galena.bench.measure;

import org.jspecify.annotations.NullMarked;
