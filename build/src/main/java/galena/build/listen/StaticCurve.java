package galena.build.listen;

import galena.build.predict.Envelope;
import galena.build.predict.Progress;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.steady.Accuracy;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.hipparchus.analysis.interpolation.AkimaSplineInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialSplineFunction;

/**
 * Amplitude, relative to the carrier's, and departure of the frequency against a standing audio voltage, laid out in a table of equal
 * steps. Between the solved points runs an Akima spline. Beyond the last point the amplitude follows its last slope, not below
 * zero; where the oscillation was lost there, it falls to nothing within a twentieth of the table.
 */
final class StaticCurve {
    private static final int TABLE = 4096;
    private static final int EACH_WAY = 13;
    private static final int HALVINGS = 3;
    private static final double FALL = 0.05;
    private static final double DENSER = 1.4;

    private final double low;
    private final double high;
    private final boolean quitsLow;
    private final boolean quitsHigh;
    private final double step;
    private final double[] amplitude = new double[TABLE + 1];
    private final double[] frequency = new double[TABLE + 1];
    private final double lowSlope;
    private final double highSlope;
    private final int points;
    private final boolean straight;

    private StaticCurve(TreeMap<Double, double[]> row, boolean quitsLow, boolean quitsHigh) {
        low = row.firstKey();
        high = row.lastKey();
        this.quitsLow = quitsLow;
        this.quitsHigh = quitsHigh;
        points = row.size();
        straight = false;
        step = (high - low) / TABLE;
        double[] at = row.keySet().stream().mapToDouble(v -> v).toArray();
        double[] a = row.values().stream().mapToDouble(p -> p[0]).toArray();
        double[] f = row.values().stream().mapToDouble(p -> p[1]).toArray();
        AkimaSplineInterpolator akima = new AkimaSplineInterpolator();
        PolynomialSplineFunction amplitudes = akima.interpolate(at, a), frequencies = akima.interpolate(at, f);
        for (int k = 0; k <= TABLE; k++) {
            double v = Math.min(high, low + k * step);
            amplitude[k] = amplitudes.value(v);
            frequency[k] = frequencies.value(v);
        }
        lowSlope = (amplitude[1] - amplitude[0]) / step;
        highSlope = (amplitude[TABLE] - amplitude[TABLE - 1]) / step;
    }

    /** A curve of given points, for checks: voltage to {relative amplitude, Hz}. */
    static StaticCurve of(Map<Double, double[]> points) {
        return new StaticCurve(new TreeMap<>(points), false, false);
    }

    /** The same amplitudes with a frequency that is its argument, in Hz. */
    StaticCurve straight() {
        return new StaticCurve(this);
    }

    private StaticCurve(StaticCurve like) {
        low = like.low;
        high = like.high;
        quitsLow = like.quitsLow;
        quitsHigh = like.quitsHigh;
        step = like.step;
        lowSlope = like.lowSlope;
        highSlope = like.highSlope;
        points = like.points;
        straight = true;
        System.arraycopy(like.amplitude, 0, amplitude, 0, amplitude.length);
    }

    /**
     * Solves it.
     *
     * @param centre at no audio, large capacitors held
     * @param range voltage to go to, either way, V
     * @return empty where fewer than five points are found
     */
    static Optional<StaticCurve> of(
            SteadyState.Found centre, String source, String coil, double range, Progress progress) {
        Circuit circuit = centre.waveforms().equations().circuit();
        double amplitude = centre.waveforms().currentAmplitude(coil, 1);
        double frequency = centre.waveforms().frequency();
        TreeMap<Double, double[]> row = new TreeMap<>(Map.of(0.0, new double[] {1, 0}));
        SteadyOscillation steady = new SteadyOscillation(Accuracy.LIVE, progress.watch());
        boolean[] quits = new boolean[2];
        for (int side = 0; side < 2; side++) {
            SteadyState.Found now = centre;
            double at = 0;
            int halved = 0;
            for (int k = 1; k <= EACH_WAY; ) {
                double wanted = (2 * side - 1) * range * Math.pow(k / (double) EACH_WAY, DENSER);
                double next = at + (wanted - at) * Math.pow(0.5, halved);
                progress.at(0.1 + 0.2 * (side + k / (double) EACH_WAY), "modulation curve");
                if (steady.solveNear(Equations.of(Envelope.at(circuit, source, next)), now)
                        instanceof SteadyState.Found found) {
                    now = found;
                    at = next;
                    row.put(at, new double[] {
                        found.waveforms().currentAmplitude(coil, 1) / amplitude,
                        found.waveforms().frequency() - frequency
                    });
                    if (halved == 0) k++;
                    else if (--halved == 0 && at != wanted) halved = 1;
                } else if (++halved > HALVINGS) {
                    quits[side] = true;
                    break;
                }
            }
        }
        if (row.size() < 5) return Optional.empty();
        return Optional.of(new StaticCurve(row, quits[0], quits[1]));
    }

    /** Points that were solved. */
    int points() {
        return points;
    }

    double low() {
        return low;
    }

    double high() {
        return high;
    }

    /** Whether the oscillation was lost at the end towards which the amplitude falls. */
    boolean quits(double v) {
        return v < low ? quitsLow : v > high && quitsHigh;
    }

    /** Relative amplitude, 1 at rest. */
    double amplitude(double v) {
        double place = (v - low) / step;
        if (place < 0) return beyond(amplitude[0], lowSlope * (v - low), quitsLow, (low - v));
        if (place >= TABLE) return beyond(amplitude[TABLE], highSlope * (v - high), quitsHigh, v - high);
        int k = (int) place;
        return amplitude[k] + (place - k) * (amplitude[k + 1] - amplitude[k]);
    }

    private double beyond(double last, double grown, boolean quits, double distance) {
        if (quits) return Math.max(0, last * (1 - distance / (FALL * (high - low))));
        return Math.max(0, last + grown);
    }

    /** Departure of the frequency, Hz; beyond the ends that of the last point. */
    double frequency(double v) {
        if (straight) return v;
        double place = (v - low) / step;
        if (place < 0) return frequency[0];
        if (place >= TABLE) return frequency[TABLE];
        int k = (int) place;
        return frequency[k] + (place - k) * (frequency[k + 1] - frequency[k]);
    }
}
