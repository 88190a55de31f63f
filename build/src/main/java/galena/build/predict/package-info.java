/**
 * What a build will do before a joint is soldered: {@code prediction = build + overlay}. {@link galena.build.predict.Predict} is
 * the door; it turns the build into a circuit, asks the engine, and puts the answers in a builder's terms: a {@link
 * galena.build.predict.Prediction}, whose every number is a {@link galena.build.figure.Figure} with the interval that
 * tolerances and device spread give it.
 *
 * <p>Intervals are first order: every toleranced value contributes its derivative times its tolerance, taken as evenly
 * distributed within it; devices contribute the difference that their weakest and strongest specimens make, each solved in
 * full. The parts add up as independent, and the interval covers 95 %. Absent on purpose: words and layout of a screen.
 */
@NullMarked
package galena.build.predict;

import org.jspecify.annotations.NullMarked;
