/**
 * What can stand in a part's place, each candidate by prediction. {@link galena.build.substitute.Substitute} (open first) looks at one
 * part closely: every device of its family over copies and with the one resistor that makes it work; the window of device parameters that
 * work, and a test with two resistors and a voltmeter that tells whether a part on the bench is inside; two parts for a value that the
 * drawer lacks. {@link galena.build.substitute.Survey} looks at all parts of a build at once, with typical, weakest and strongest
 * specimens and neighbouring values, for the packet.
 *
 * <p>Promised: nothing is called a substitute that was not solved; a window's ends were solved on both sides, and so were the corners of the
 * test's readings, which come of the same device equations as the build's.
 *
 * <p>Absent on purpose: pinouts, packages, ratings and prices, which the sheet tells.
 */
@NullMarked
package galena.build.substitute;

import org.jspecify.annotations.NullMarked;
