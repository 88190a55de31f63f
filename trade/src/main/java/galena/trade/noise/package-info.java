/**
 * Noise at the listener, classes of receiver, and what is heard at a distance.
 *
 * <p>Belongs here: man-made noise by ITU-R P.372 as a field in a bandwidth ({@link galena.trade.noise.NoiseField}), with an
 * excess entered for indoors; receivers as data ({@link galena.trade.noise.ReceiverClass}); audio signal-to-noise against
 * distance ({@link galena.trade.noise.Listening}). Does not belong here: atmospheric noise and stations. Fields are rms;
 * a receiver with a rod takes up H, shown times 377 Ω, one with a wire takes up E. Open first: {@link
 * galena.trade.noise.Listening}.
 */
@NullMarked
package galena.trade.noise;

import org.jspecify.annotations.NullMarked;
