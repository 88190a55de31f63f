/**
 * Figures as they are shown and handed on: a value with its interval, unit, basis, the quantity it is of and where; or, in
 * place of a value that can't be had, the reason. The shape {@code {value, unit, low, high, basis, quantity, at}} or {@code
 * {missing, reason}} is the same in every answer of Galena. Start at {@link galena.build.figure.Figure}.
 */
@NullMarked
package galena.build.figure;

import org.jspecify.annotations.NullMarked;
