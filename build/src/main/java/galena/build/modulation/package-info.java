/**
 * What a tone does to a solved carrier, with the memory of tanks and audio path in it: peaks, harmonics, carrier shift and swing at a
 * level and an audio frequency ({@link galena.build.modulation.Modulator#at}), and the audio response with its −3 dB points
 * ({@link galena.build.modulation.Modulator#response}). The figures are those of {@code galena.signal.modulation}, one definition
 * for predicted and measured. Knows circuits and carriers, no build folder: that is for the packages above. Open first: {@link
 * galena.build.modulation.Modulator}.
 */
@NullMarked
package galena.build.modulation;

import org.jspecify.annotations.NullMarked;
