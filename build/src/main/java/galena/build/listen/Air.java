package galena.build.listen;

import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Predict;
import galena.build.predict.Prediction;
import galena.build.predict.Progress;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.reach.Hearing;
import galena.build.reach.Reach;
import galena.build.reach.Reaching;
import galena.build.reach.Surroundings;
import galena.build.source.BadInputException;
import galena.engine.steady.Accuracy;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What lies between a build and a set, taken from its reach.
 *
 * @param distance m
 * @param signalToNoise of the audio, loud passages, dB
 * @param noiseToCarrier rms noise over carrier in the set's bandwidth, as the field there gives it
 * @param silent whether the set does not play at all
 */
public record Air(double distance, Figure signalToNoise, double noiseToCarrier, boolean silent) {

    /** How far off a set stands where neither asked nor intended, m. */
    private static final double USUAL_DISTANCE = 3;

    /**
     * What was found of the way to a set.
     *
     * @param missing why nothing was, in words
     */
    public record Sought(Optional<Air> air, Optional<String> missing) {
        private static Sought none(String why) {
            return new Sought(Optional.empty(), Optional.of(why));
        }
    }

    /**
     * By the build's own reach.
     *
     * @param distance m; the intent's, or 3 m, unless said
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws IOException when the drawer can't be read for the digest
     */
    public static Sought to(
            SetKind set,
            BuildFolder folder,
            Overlay overlay,
            Surroundings around,
            OptionalDouble distance,
            Progress progress)
            throws BadInputException, NoOperatingPoint, IOException {
        Prediction prediction = Predict.of(folder, overlay, Accuracy.LIVE, progress);
        if (!(Reaching.of(folder.build(), prediction, around) instanceof Reach reach))
            return Sought.none("the build's reach is not known");
        double far = distance.orElseGet(
                () -> folder.build().intent().distance().map(Quantity::value).orElse(USUAL_DISTANCE));
        Optional<Air> air = of(reach, set, far);
        return air.isPresent()
                ? new Sought(air, Optional.empty())
                : Sought.none("reach gives no signal-to-noise at that distance");
    }

    /**
     * @param reach of the build
     * @param set that listens
     * @param distance m; between those that the reach was reckoned for it is interpolated on the logarithm
     * @return empty when the reach says nothing of that set, or not at that distance
     */
    public static Optional<Air> of(Reach reach, SetKind set, double distance) {
        if (!(reach.depth() instanceof Figure.Known depth)) return Optional.empty();
        return reach.hearing().stream()
                .filter(h -> h.receiver().equals(set.receiver().name()))
                .findFirst()
                .flatMap(h -> at(h, Math.min(1, depth.value()), distance));
    }

    private static Optional<Air> at(Hearing hearing, double depth, double distance) {
        List<Hearing.Heard> curve = hearing.curve();
        for (int k = 1; k < curve.size(); k++) {
            Hearing.Heard near = curve.get(k - 1), far = curve.get(k);
            if (distance < near.distance() || distance > far.distance()) continue;
            double share = Math.log(distance / near.distance()) / Math.log(far.distance() / near.distance());
            Figure.Known a = near.signalToNoise(), b = far.signalToNoise();
            double value = between(a.value(), b.value(), share);
            Figure.Known between = new Figure.Known(
                    value,
                    Unit.DECIBEL,
                    Math.min(value, between(a.low(), b.low(), share)),
                    Math.max(value, between(a.high(), b.high(), share)),
                    a.basis(),
                    a.quantity(),
                    a.at());
            // at full modulation the audio stands over its noise as the carrier's field over the noise's
            double noise = depth * Math.pow(10, -value / 20);
            return Optional.of(new Air(distance, between, noise, share < 0.5 ? near.silent() : far.silent()));
        }
        return Optional.empty();
    }

    private static double between(double a, double b, double share) {
        return a + share * (b - a);
    }
}
