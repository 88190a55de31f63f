package galena.build.predict;

import galena.build.figure.Figure;

/**
 * What a static modulation curve says beyond the figures at the audio's own level.
 *
 * @param audioForDepth audio level that reaches the intent's depth, peak V
 * @param cleanLevel audio level at the deepest clean modulation, peak V
 * @param bestBias standing voltage that, added to the audio, would let it modulate deepest and still clean, V
 * @param biasedDepth the negative peak with that bias
 * @param biasedLevel its audio level, peak V
 * @param stopsBelow audio voltage below zero at which the carrier quits or breaks off, V
 * @param stopsAbove the same above zero
 */
public record StaticLimits(
        Figure audioForDepth,
        Figure cleanLevel,
        Figure bestBias,
        Figure biasedDepth,
        Figure biasedLevel,
        Figure stopsBelow,
        Figure stopsAbove) {}
