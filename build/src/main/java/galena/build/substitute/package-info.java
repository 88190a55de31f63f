/**
 * What can stand in a part's place: other devices, each by full prediction and with the one resistor that makes it work; the window
 * of device parameters that work, and a test with two resistors and a voltmeter that tells whether a part on the bench is inside;
 * two parts for a value that the drawer lacks. Open {@link galena.build.substitute.Substitute} first.
 *
 * <p>Promised: every row was solved; a window's ends were solved on both sides. Readings of the test are of the same device equations
 * as the build's.
 *
 * <p>Absent on purpose: pinouts and packages, which the sheet tells.
 */
@NullMarked
package galena.build.substitute;

import org.jspecify.annotations.NullMarked;
