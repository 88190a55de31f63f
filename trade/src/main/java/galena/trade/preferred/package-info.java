/**
 * Preferred numbers (IEC 60063), marking codes of resistors and capacitors (IEC 60062) in both directions, and what two
 * parts out of a drawer make together.
 *
 * <p>Promises: values are exact decimals of the series; a code that can be read in two ways, or in none, is refused with
 * what would be right ({@link galena.trade.preferred.MarkingException}). Case matters in letter codes: m is milli, M is
 * mega. Open first: {@link galena.trade.preferred.Series} and {@link galena.trade.preferred.LetterCode}.
 */
@NullMarked
package galena.trade.preferred;

import org.jspecify.annotations.NullMarked;
