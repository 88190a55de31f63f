package galena.build.listen;

import java.util.Arrays;
import java.util.List;

/**
 * A build's transmitter for listening: two channels of a programme in, the complex envelope of its carrier out. In this order:
 *
 * <ol>
 *   <li>the audio path, linear, a sum of one-pole filters ({@link FilterBank}) for what modulates the amplitude and another for
 *       what modulates the frequency;
 *   <li>the static curve, which bends: limiters, op-amps at their rails, cut-off and over-modulation are in it ({@link StaticCurve});
 *   <li>the tank, linear, again as one-pole filters, with a part in quadrature that makes the two sidebands differ;
 *   <li>the phase that the frequency piles up and that the amplitude carries along, and the lines of the mains.
 * </ol>
 *
 * One stream each. Blocks allocate nothing; loops run over samples inside, with four filters at a time so that their recursions
 * overlap.
 */
final class ReducedModel {
    /** Below this share of the carrier it counts as over-modulated. */
    static final double GONE = 0.02;

    private static final int TOGETHER = 4;

    private final Reduction of;
    private final Bank[] path;
    private final Bank tank;
    private final boolean alike;
    private final double[] mono;
    private final double[] amplitude;
    private final double[] frequency;
    private final double[] departure;
    private final double[][] humTurn;
    private final double[][] humNow;
    private final Episodes gone;
    private final Episodes quits;
    private final Episodes beyond;
    private double cos = 1;
    private double sin;
    private double lastDeparture;
    private long count;

    /** @param block most samples at a time */
    ReducedModel(Reduction of, int block) {
        this.of = of;
        int channels = of.toAmplitude().size();
        alike = channels == 1 || (same(of.toAmplitude()) && same(of.toFrequency()));
        path = new Bank[alike ? 1 : channels];
        double share = channels == 1 ? 1 : alike ? 2 : 1; // of the mean of both channels
        for (int c = 0; c < path.length; c++)
            path[c] = new Bank(
                    of.path().poles(),
                    times(of.toAmplitude().get(c), share),
                    times(of.toFrequency().get(c), share));
        tank = new Bank(of.tank().poles(), of.inPhase(), of.quadrature());
        mono = new double[block];
        amplitude = new double[block];
        frequency = new double[block];
        departure = new double[block];
        humTurn = new double[of.hum().size()][2];
        humNow = new double[of.hum().size()][2];
        for (int h = 0; h < humTurn.length; h++) {
            double angle = 2 * Math.PI * of.hum().get(h).frequency() / of.rate();
            humTurn[h][0] = Math.cos(angle);
            humTurn[h][1] = Math.sin(angle);
            humNow[h][0] = 1;
        }
        gone = new Episodes(of.rate());
        quits = new Episodes(of.rate());
        beyond = new Episodes(of.rate());
    }

    private static boolean same(List<double[]> weights) {
        double largest = 0, differs = 0;
        for (int k = 0; k < weights.get(0).length; k++) {
            largest = Math.max(largest, Math.abs(weights.get(0)[k]));
            differs = Math.max(differs, Math.abs(weights.get(0)[k] - weights.get(1)[k]));
        }
        return differs <= 1e-4 * largest;
    }

    private static double[] times(double[] weights, double factor) {
        double[] out = weights.clone();
        for (int k = 0; k < out.length; k++) out[k] *= factor;
        return out;
    }

    /**
     * @param left read; full scale 1
     * @param right read
     * @param i written: the envelope in phase, 1 for the carrier
     * @param q written: in quadrature
     */
    void process(double[] left, double[] right, int n, double[] i, double[] q) {
        Arrays.fill(amplitude, 0, n, 0);
        Arrays.fill(frequency, 0, n, 0);
        if (alike) {
            for (int k = 0; k < n; k++) mono[k] = 0.5 * (left[k] + right[k]);
            path[0].add(mono, n, amplitude, frequency);
        } else {
            path[0].add(left, n, amplitude, frequency);
            path[1].add(right, n, amplitude, frequency);
        }
        bend(n);
        Arrays.fill(i, 0, n, 1);
        Arrays.fill(q, 0, n, 0);
        tank.add(departure, n, i, q);
        for (int h = 0; h < humNow.length; h++) hum(h, n, i, q);
        turn(n, i, q);
        count += n;
    }

    private void bend(int n) {
        StaticCurve curve = of.curve();
        double low = curve.low(), high = curve.high();
        for (int k = 0; k < n; k++) {
            double v = amplitude[k], a = curve.amplitude(v);
            departure[k] = a - 1;
            frequency[k] = curve.frequency(frequency[k]);
            if (a < GONE || gone.lasts()) note(gone, a < GONE, k);
            boolean out = v < low || v > high;
            if (out || quits.lasts() || beyond.lasts()) {
                boolean lost = out && curve.quits(v);
                note(quits, lost, k);
                note(beyond, out && !lost, k);
            }
        }
    }

    private void note(Episodes episodes, boolean now, int k) {
        if (now) episodes.begin(count + k);
        else episodes.end(count + k);
    }

    private void hum(int h, int n, double[] i, double[] q) {
        double[] depth = of.hum().get(h).amplitude(), swing = of.hum().get(h).swing();
        double c = humNow[h][0], s = humNow[h][1], tc = humTurn[h][0], ts = humTurn[h][1];
        for (int k = 0; k < n; k++) {
            double more = 1 + depth[0] * c - depth[1] * s;
            i[k] *= more;
            q[k] *= more;
            frequency[k] += swing[0] * c - swing[1] * s;
            double next = c * tc - s * ts;
            s = c * ts + s * tc;
            c = next;
        }
        double size = 1.5 - 0.5 * (c * c + s * s);
        humNow[h][0] = c * size;
        humNow[h][1] = s * size;
    }

    /** Turns each sample by the phase reached; a step's sine and cosine by their series, to 1e-9 up to a fifth of a radian. */
    private void turn(int n, double[] i, double[] q) {
        double c = cos, s = sin, last = lastDeparture, phase = of.phase(), perHertz = 2 * Math.PI / of.rate();
        for (int k = 0; k < n; k++) {
            double re = i[k], im = q[k];
            i[k] = re * c - im * s;
            q[k] = re * s + im * c;
            double d = perHertz * frequency[k] + phase * (departure[k] - last), d2 = d * d;
            last = departure[k];
            double dc = 1 - d2 * (1.0 / 2 - d2 * (1.0 / 24 - d2 / 720));
            double ds = d * (1 - d2 * (1.0 / 6 - d2 * (1.0 / 120 - d2 / 5040)));
            double next = c * dc - s * ds;
            s = c * ds + s * dc;
            c = next;
        }
        double size = 1.5 - 0.5 * (c * c + s * s);
        cos = c * size;
        sin = s * size;
        lastDeparture = last;
    }

    /** Over-modulation so far. */
    Happened.Event overmodulation() {
        gone.end(count);
        return gone.summed("overmodulation");
    }

    /** Where the oscillation stops in the trough. */
    Happened.Event stops() {
        quits.end(count);
        return quits.summed("oscillation stops");
    }

    /** Where the programme goes beyond the solved curve, which is then continued straight. */
    Happened.Event beyond() {
        beyond.end(count);
        return beyond.summed("beyond the solved curve");
    }

    /** One-pole filters on one input, summed with two sets of weights. */
    private static final class Bank {
        private final double[] pole;
        private final double[] first;
        private final double[] second;
        private final double[] state;
        private final double direct1;
        private final double direct2;
        private final double before1;
        private final double before2;
        private double before;

        /** Weights as {@link FilterBank} gives them: of the sample, of the one before, of each pole. */
        Bank(double[] poles, double[] one, double[] two) {
            int n = (poles.length + TOGETHER - 1) / TOGETHER * TOGETHER;
            pole = new double[n];
            first = new double[n];
            second = new double[n];
            state = new double[n];
            for (int k = 0; k < poles.length; k++) {
                pole[k] = poles[k];
                first[k] = one[k + 2];
                second[k] = two[k + 2];
            }
            direct1 = one[0];
            direct2 = two[0];
            before1 = one[1];
            before2 = two[1];
        }

        void add(double[] in, int n, double[] one, double[] two) {
            double last = before;
            for (int k = 0; k < n; k++) {
                double x = in[k];
                one[k] += direct1 * x + before1 * last;
                two[k] += direct2 * x + before2 * last;
                last = x;
            }
            before = last;
            for (int p = 0; p < pole.length; p += TOGETHER) four(p, in, n, one, two);
        }

        private void four(int p, double[] in, int n, double[] one, double[] two) {
            double a0 = pole[p], a1 = pole[p + 1], a2 = pole[p + 2], a3 = pole[p + 3];
            double u0 = first[p], u1 = first[p + 1], u2 = first[p + 2], u3 = first[p + 3];
            double w0 = second[p], w1 = second[p + 1], w2 = second[p + 2], w3 = second[p + 3];
            double y0 = state[p], y1 = state[p + 1], y2 = state[p + 2], y3 = state[p + 3];
            for (int k = 0; k < n; k++) {
                double x = in[k];
                y0 = x + a0 * (y0 - x);
                y1 = x + a1 * (y1 - x);
                y2 = x + a2 * (y2 - x);
                y3 = x + a3 * (y3 - x);
                one[k] += (u0 * y0 + u1 * y1) + (u2 * y2 + u3 * y3);
                two[k] += (w0 * y0 + w1 * y1) + (w2 * y2 + w3 * y3);
            }
            state[p] = y0;
            state[p + 1] = y1;
            state[p + 2] = y2;
            state[p + 3] = y3;
        }
    }
}
