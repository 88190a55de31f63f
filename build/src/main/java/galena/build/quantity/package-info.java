/**
 * Quantities as people write them, and as they are printed back.
 *
 * <p>Read: {@code 4.7k}, {@code 4k7}, {@code 47n}, {@code 100 µH}, {@code 2 %}, {@code 5..60 pF}, {@code 60 Hz..4.5 kHz},
 * {@code 85 @ 1 MHz}, {@code -10..+50 °C}, {@code 20 h}. Letter codes are those of IEC 60062, prefixes those of the SI.
 * Decisions that hold everywhere:
 *
 * <ul>
 *   <li>{@code M} is mega and {@code m} is milli, always. {@code K} is read as kilo (IEC 60062 prints it so).
 *   <li>The micro sign is U+00B5, U+03BC or {@code u}; the ohm sign U+2126, U+03A9, {@code ohm} or {@code R}.
 *   <li>Component values (ohm, farad, henry) may end with the bare prefix, {@code 47n}; all else names its unit.
 *   <li>A bare number is refused where a unit is due: 104 on a capacitor may be a marking code.
 *   <li>A comma is refused with the two spellings it may stand for: YAML splits lists at commas, and some write 1,000.
 *   <li>In a range the side without a unit takes the other side's: {@code 5..60 pF}.
 * </ul>
 *
 * What comes out is finite and in SI base units (temperatures in kelvin, fractions as fractions), with the text kept. A text
 * that can't be read throws {@link galena.build.quantity.BadQuantity}: what was read, what is allowed, the nearest valid
 * spelling. Places in a file are not known here. Open {@link galena.build.quantity.Quantity} first.
 */
@NullMarked
package galena.build.quantity;

import org.jspecify.annotations.NullMarked;
