package galena.build.listen;

import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import galena.build.reach.Hearing;
import galena.build.reach.Reach;
import java.util.List;
import java.util.Optional;

/**
 * What lies between a build and a set, taken from its reach.
 *
 * @param distance m
 * @param signalToNoise of the audio, loud passages, dB
 * @param noiseToCarrier rms noise over carrier in the set's bandwidth, as the field there gives it
 * @param silent whether the set does not play at all
 */
public record Air(double distance, Figure signalToNoise, double noiseToCarrier, boolean silent) {

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
