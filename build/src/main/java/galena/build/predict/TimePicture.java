package galena.build.predict;

import galena.build.folder.TestPoint;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.hipparchus.analysis.interpolation.AkimaSplineInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialSplineFunction;

/**
 * The voltage at a test point against time while a slow audio voltage stands at the source: one solved period for each of a row
 * of audio voltages, as Fourier coefficients that are interpolated between them. Large capacitors hold their charge and the
 * tank's memory is left out, as in {@link StaticModulation}: right for audio far below half the tank's bandwidth.
 */
public final class TimePicture {
    /** Enough for what an 8-bit scope can show of a carrier on medium wave. */
    private static final int HARMONICS = 12;

    private static final int POINTS_EACH_WAY = 6;
    private static final int FEWEST = 5;

    private final double reach;
    private final PolynomialSplineFunction frequency;
    /** Cosine and sine of harmonics 1 to {@link #HARMONICS}, in turn. */
    private final List<PolynomialSplineFunction> waves;

    private TimePicture(TreeMap<Double, SteadyState.Found> row, TestPoint point) {
        reach = Math.min(-row.firstKey(), row.lastKey());
        double[] audio = row.keySet().stream().mapToDouble(a -> a).toArray();
        double[][] values = new double[1 + 2 * HARMONICS][audio.length];
        int k = 0;
        for (SteadyState.Found state : row.values()) {
            Waveforms w = state.waveforms();
            int at = w.equations().net(point.at()), to = w.equations().net(point.to());
            values[0][k] = w.frequency();
            for (int h = 1; h <= HARMONICS; h++) {
                double[] a = w.coefficient(at, h), b = w.coefficient(to, h);
                values[2 * h - 1][k] = 2 * (a[0] - b[0]);
                values[2 * h][k] = -2 * (a[1] - b[1]);
            }
            k++;
        }
        AkimaSplineInterpolator akima = new AkimaSplineInterpolator();
        frequency = akima.interpolate(audio, values[0]);
        waves = new ArrayList<>();
        for (int i = 1; i < values.length; i++) waves.add(akima.interpolate(audio, values[i]));
    }

    /**
     * Solves the row.
     *
     * @param running the build with its probe connected, unmodulated
     * @param level largest audio voltage of either sign, V, above zero
     * @return empty when the build has no audio source, or stops oscillating at less than two thirds of the level
     */
    public static Optional<TimePicture> of(Running running, TestPoint point, double level, Progress progress) {
        Optional<String> source = running.audioSource();
        if (source.isEmpty() || !(level > 0)) return Optional.empty();
        Circuit held = Envelope.hold(running.state().waveforms());
        Optional<SteadyState.Found> centre = cold(Envelope.at(held, source.get(), 0), progress);
        if (centre.isEmpty()) return Optional.empty();
        TreeMap<Double, SteadyState.Found> row = new TreeMap<>(Map.of(0.0, centre.get()));
        SteadyOscillation steady = new SteadyOscillation(Accuracy.LIVE, progress.watch());
        for (int side = -1; side <= 1; side += 2) {
            SteadyState.Found now = centre.get();
            for (int k = 1; k <= POINTS_EACH_WAY; k++) {
                progress.at(0.5, "time picture");
                double audio = side * k * level / POINTS_EACH_WAY;
                if (!(steady.solveNear(Equations.of(Envelope.at(held, source.get(), audio)), now)
                        instanceof SteadyState.Found next)) break;
                now = next;
                row.put(audio, now);
            }
        }
        TimePicture picture = row.size() < FEWEST ? null : new TimePicture(row, point);
        return Optional.ofNullable(picture).filter(p -> p.reach > level * 2 / 3);
    }

    private static Optional<SteadyState.Found> cold(Circuit circuit, Progress progress) {
        if (!(OperatingPointLadder.climb(Equations.of(circuit)) instanceof OperatingPoint.Found point))
            return Optional.empty();
        return Startup.readiest(point)
                .map(s -> new SteadyOscillation(Accuracy.LIVE, progress.watch()).solve(point, s))
                .filter(SteadyState.Found.class::isInstance)
                .map(SteadyState.Found.class::cast);
    }

    /** Audio voltage, of either sign, up to which it holds, V. */
    public double reach() {
        return reach;
    }

    /** Carrier at an audio voltage within the reach, Hz. */
    public double frequency(double audio) {
        return frequency.value(audio);
    }

    /**
     * The alternating voltage at the point, V.
     *
     * @param audio voltage within the reach
     * @param phase of the carrier, 0 to 1
     */
    public double voltage(double audio, double phase) {
        double c1 = Math.cos(2 * Math.PI * phase), s1 = Math.sin(2 * Math.PI * phase), c = 1, s = 0, sum = 0;
        for (int h = 1; h <= HARMONICS; h++) {
            double next = c * c1 - s * s1;
            s = s * c1 + c * s1;
            c = next;
            sum += waves.get(2 * h - 2).value(audio) * c + waves.get(2 * h - 1).value(audio) * s;
        }
        return sum;
    }
}
