package galena.build.predict;

import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.source.BadInputException;
import galena.build.source.Nearest;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.build.wiring.CircuitOf;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.startup.Linearised;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The small-signal response from a source to a net about the operating point, oscillators held at rest.
 *
 * @param source that is driven with one unit (V or A)
 * @param net read against ground
 * @param points by rising frequency
 * @param peak the highest of them, found to rounding between the points
 * @param lower where the response has fallen by 3.01 dB below the peak; empty where it does not within the range
 * @param upper the same above
 */
public record Response(
        String source, String net, List<Point> points, Point peak, OptionalDouble lower, OptionalDouble upper) {
    private static final double HALF_POWER = 10 * Math.log10(2);
    private static final int BISECTIONS = 60;
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    public Response {
        points = List.copyOf(points);
    }

    /**
     * @param frequency Hz
     * @param decibels of volts at the net over the source's unit
     * @param degrees phase, −180 to 180
     */
    public record Point(double frequency, double decibels, double degrees) {}

    /** Peak frequency over the width between the −3 dB points: the loaded Q of a resonance. */
    public OptionalDouble loadedQ() {
        if (lower.isEmpty() || upper.isEmpty()) return OptionalDouble.empty();
        return OptionalDouble.of(peak.frequency / (upper.getAsDouble() - lower.getAsDouble()));
    }

    /**
     * @param source an audio, voltage or current source among the parts
     * @param net a net of the build
     * @param low Hz, above zero
     * @param high Hz, above {@code low}
     * @param perDecade points a decade, 1 or more
     * @throws BadInputException when a name is not the build's, or the circuit has no solution for a reason in the file
     * @throws NoOperatingPoint when none was found
     */
    public static Response of(
            BuildFolder folder, Overlay overlay, String source, String net, double low, double high, int perDecade)
            throws BadInputException, NoOperatingPoint {
        if (!(low > 0 && high > low && perDecade >= 1)) {
            throw new IllegalArgumentException("frequencies run from " + low + " to " + high + " Hz");
        }
        requireSource(folder, source);
        Circuit circuit = CircuitOf.build(folder.build(), overlay).circuit();
        requireNet(circuit, net);
        Equations equations = Equations.of(circuit);
        OperatingPoint rest = OperatingPointLadder.climb(equations);
        if (rest instanceof OperatingPoint.NotFound none) throw new NoOperatingPoint(none);
        Linearised linearised = Linearised.at(equations, ((OperatingPoint.Found) rest).x());
        return new Ask(linearised, equations.unitDeparture(source), equations.net(net))
                .over(source, net, low, high, perDecade);
    }

    private static void requireSource(BuildFolder folder, String source) throws BadInputException {
        List<String> sources = folder.build().parts().values().stream()
                .filter(p -> p.kind().isProgramme() || p.kind() == PartKind.VOLTAGE || p.kind() == PartKind.CURRENT)
                .map(PartEntry::name)
                .toList();
        if (!sources.contains(source)) {
            throw unknown("SOURCE", "no source is named \"" + source + '"', source, sources, "Sources");
        }
    }

    private static void requireNet(Circuit circuit, String net) throws BadInputException {
        List<String> nets =
                circuit.nets().stream().filter(n -> !Predict.isInner(n)).toList();
        if (!nets.contains(net)) throw unknown("NET", "no net is named \"" + net + '"', net, nets, "Nets");
    }

    private static BadInputException unknown(
            String place, String found, String given, List<String> known, String what) {
        String all = known.isEmpty() ? "The build has none." : what + ": " + String.join(", ", known) + ".";
        Optional<String> nearest = Nearest.to(given, known).map(n -> "Nearest: " + n);
        return new BadInputException(new Problem(new Place(place, 1, 1), "", found, all, nearest));
    }

    /** The linearised circuit, asked at one frequency after the other. */
    private record Ask(Linearised linearised, double[] drive, int unknown) {
        Point at(double frequency) {
            double[][] x = linearised.respond(frequency, drive);
            double re = x[0][unknown], im = x[1][unknown];
            return new Point(frequency, 20 * Math.log10(Math.hypot(re, im)), Math.toDegrees(Math.atan2(im, re)));
        }

        Response over(String source, String net, double low, double high, int perDecade) {
            int steps = (int) Math.max(2, Math.ceil(perDecade * Math.log10(high / low)));
            List<Point> points = new ArrayList<>();
            int best = 0;
            for (int k = 0; k <= steps; k++) {
                points.add(at(low * Math.pow(high / low, (double) k / steps)));
                if (points.get(k).decibels > points.get(best).decibels) best = k;
            }
            Point peak = best == 0 || best == steps
                    ? points.get(best)
                    : summit(points.get(best - 1).frequency, points.get(best + 1).frequency);
            return new Response(source, net, points, peak, fallen(points, peak, -1), fallen(points, peak, 1));
        }

        /** The highest point between two frequencies, by golden section in their logarithm. */
        private Point summit(double from, double to) {
            double a = Math.log(from), b = Math.log(to);
            for (int k = 0; k < BISECTIONS; k++) {
                double c = b - GOLDEN * (b - a), d = a + GOLDEN * (b - a);
                if (at(Math.exp(c)).decibels > at(Math.exp(d)).decibels) b = d;
                else a = c;
            }
            return at(Math.exp((a + b) / 2));
        }

        /** Where the response is half the peak's power on one side, by bisection. */
        private OptionalDouble fallen(List<Point> points, Point peak, int side) {
            double level = peak.decibels - HALF_POWER, inside = peak.frequency;
            List<Point> outward = points.stream()
                    .filter(p -> side * (p.frequency - peak.frequency) > 0)
                    .sorted((p, q) -> side * Double.compare(p.frequency, q.frequency))
                    .toList();
            for (Point point : outward) {
                if (point.decibels > level) {
                    inside = point.frequency;
                    continue;
                }
                double above = inside, below = point.frequency;
                for (int k = 0; k < BISECTIONS; k++) {
                    double middle = Math.sqrt(above * below);
                    if (at(middle).decibels > level) above = middle;
                    else below = middle;
                }
                return OptionalDouble.of(Math.sqrt(above * below));
            }
            return OptionalDouble.empty();
        }
    }
}
