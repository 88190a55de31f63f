/**
 * Small devices as data sheets print them, and the model parameters that follow.
 *
 * <p>Belongs here: the library of type numbers with minimum, typical and maximum figures, test conditions and source
 * ({@link galena.trade.device.DeviceLibrary}); a builder's own devices ({@link galena.trade.device.DeviceData}); and
 * the way from printed figures to the parameters of the textbook equations. Every derived number comes with a {@link
 * galena.trade.device.Step} that names the formula, the printed rows and the assumption; what can't be derived is a
 * {@link galena.trade.device.NotDerivable} with the reason. Does not belong here: circuits and solvers.
 *
 * <p>Signs and units: SI. A printed figure keeps its printed sign. Models give pinch-off negative for an N-channel
 * JFET. Thermal voltage at the sheets' 25 °C. Where only one limit is printed the typical device is estimated by {@link
 * galena.trade.device.Range#TYPICAL_OF_MAXIMUM} and said so; where nothing is printed a default stands with the basis
 * "common practice".
 *
 * <p>Equations: Shockley junctions; depletion capacitance C0/(1−V/φ)^m; JFET square law; transport form of the bipolar
 * transistor (P. R. Gray, R. G. Meyer, Analysis and Design of Analog Integrated Circuits, chapter 1). Open first: {@link
 * galena.trade.device.DeviceLibrary}, then {@link galena.trade.device.JfetData}.
 */
@NullMarked
package galena.trade.device;

import org.jspecify.annotations.NullMarked;
