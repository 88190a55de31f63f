/**
 * What may stand in place of a part, found by predicting each candidate: {@link galena.build.replace.Replacements} (open first)
 * fits every device of the library that has the same function, typical, weakest and strongest, and every resistor and
 * capacitor with neighbouring values, trims the copy and holds it against the intent. Promised: nothing is called a replacement
 * that was not solved. Absent on purpose: pins, ratings and prices, which are for the sheet of the device in hand to say.
 */
@NullMarked
package galena.build.replace;

import org.jspecify.annotations.NullMarked;
