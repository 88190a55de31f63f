package galena.signal.modulation;

import galena.signal.carrier.Samples;
import java.util.Random;

/** A capture whose every figure is known: tone modulation with harmonics, swing, carrier harmonics, and a real scope. */
final class SyntheticCapture {
    final double carrier;
    final double tone;
    final double amplitude;
    final double[] envelope; // audio harmonics over the carrier, from 1
    final double[] phases;
    final double swing;
    final double swingPhase;
    final double[] harmonics; // of the carrier, from 2
    final double hum;
    final double noise;
    final double jitter;
    final double rate;
    final int count;
    final int bits;
    final double offset;
    private final Random random;

    SyntheticCapture(long seed) {
        random = new Random(seed);
        carrier = between(5.3e5, 8.5e5);
        tone = between(400, 2000);
        amplitude = between(0.5, 2);
        double m = between(0.2, 0.9);
        envelope = new double[] {m, m * between(0.01, 0.06), m * between(0.01, 0.04)};
        phases = new double[] {turn(), turn(), turn()};
        swing = between(30, 600);
        swingPhase = turn();
        harmonics = new double[] {between(0.01, 0.1), between(0.003, 0.05)};
        hum = between(0.002, 0.02);
        noise = between(0.003, 0.02) * amplitude;
        jitter = between(20e-12, 200e-12);
        rate = between(5.3e6, 7e6); // the third harmonic stays below half of it
        count = (int) (rate * between(0.041, 0.05));
        bits = 8;
        offset = between(-0.1, 0.1) * amplitude;
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private double turn() {
        return 2 * Math.PI * random.nextDouble();
    }

    /** Envelope over the carrier without hum at a time (s). */
    double envelopeAt(double t) {
        double e = 1;
        for (int k = 1; k <= envelope.length; k++) {
            e += envelope[k - 1] * Math.cos(2 * Math.PI * k * tone * t + phases[k - 1]);
        }
        return e;
    }

    private double at(double t) {
        double angle = 2 * Math.PI * carrier * t + swing / tone * Math.sin(2 * Math.PI * tone * t + swingPhase);
        double e = amplitude * (envelopeAt(t) + hum * Math.cos(2 * Math.PI * 100 * t + 1));
        double x = Math.cos(angle);
        for (int n = 2; n < harmonics.length + 2; n++) x += harmonics[n - 2] * Math.cos(n * angle + n);
        return e * x + offset;
    }

    /** One step of the converter (unit of the capture): full scale fits the peaks with a tenth to spare. */
    double step() {
        return 2 * 1.1 * amplitude * 2.1 / (1 << bits);
    }

    Samples samples() {
        double[] x = new double[count];
        double step = step();
        for (int k = 0; k < count; k++) {
            double t = k / rate + jitter * random.nextGaussian();
            x[k] = step * Math.rint((at(t) + noise * random.nextGaussian()) / step);
        }
        return Samples.real(x, 1 / rate);
    }

    double extreme(int sign) {
        double best = -sign * 1e9;
        for (int k = 0; k < 20000; k++) {
            double e = envelopeAt(k / (20000 * tone));
            if (sign * e > sign * best) best = e;
        }
        return best;
    }

    /** Amplitude of a first sideband over the carrier's line, both of envelope and swing together. */
    double sideband(int side) {
        return line(side) / line(0);
    }

    private double line(int order) {
        int n = 4096;
        double re = 0, im = 0;
        for (int k = 0; k < n; k++) {
            double t = k / (n * tone), turn = 2 * Math.PI * k / n;
            double angle = swing / tone * Math.sin(turn + swingPhase) - order * turn;
            re += envelopeAt(t) * Math.cos(angle) / n;
            im += envelopeAt(t) * Math.sin(angle) / n;
        }
        return Math.hypot(re, im);
    }

    /** Noise of the envelope from 50 Hz to 5 kHz, rms over the carrier. */
    double noiseRms() {
        double white = noise * noise + step() * step() / 12;
        double depth = envelope[0];
        double slope = amplitude * 2 * Math.PI * carrier * jitter; // a quarter of jitter's power is in phase
        double density = 2 * white + 0.5 * slope * slope * (1 + depth * depth / 2);
        return Math.sqrt(2 * density / rate * 4950) / amplitude;
    }
}
