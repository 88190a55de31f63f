/**
 * Slow frequency change from logs: rate, warm-up, and how strongly supply, temperature or a capacitor pulls. Readings of
 * one log are seldom independent, so intervals widen with the correlation of what a fit leaves over.
 * Open first: {@link galena.signal.drift.WarmUp}.
 */
@NullMarked
package galena.signal.drift;

import org.jspecify.annotations.NullMarked;
