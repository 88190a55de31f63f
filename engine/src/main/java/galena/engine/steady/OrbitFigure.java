package galena.engine.steady;

import galena.engine.equations.Equations;
import java.util.Locale;

/**
 * A number read from an orbit, with its derivatives by all that the orbit is made of: what an adjoint differentiates and what a
 * re-trim imposes. Immutable.
 */
public abstract sealed class OrbitFigure {
    private OrbitFigure() {}

    /** As read from a solved period. */
    public abstract double of(Waveforms waveforms);

    /**
     * Writes ∂φ/∂x along an orbit.
     *
     * @param gradient added to; laid out like {@link Orbit#x}
     * @return ∂φ/∂f
     */
    abstract double addGradient(Waveforms waveforms, double[] gradient);

    /** How far from a value the figure is led in one step of a re-trim. */
    abstract double reach(double value);

    /** Whether a solved value is the wanted one, to twice what an accuracy promises: it is imposed on the coarser of two meshes. */
    abstract boolean meets(double value, double wanted, Accuracy accuracy);

    /** What it is in words, with its unit. */
    abstract String words(double value);

    private static final double MESHES = 2;

    /** The frequency, Hz. */
    public static OrbitFigure frequency() {
        return new Frequency();
    }

    /** The peak amplitude of harmonic h of x_a − x_b; 0 is ground. */
    public static OrbitFigure amplitude(int a, int b, int h) {
        return new Amplitude(a, b, h);
    }

    /** The mean of x_a − x_b. */
    public static OrbitFigure mean(int a, int b) {
        return new Mean(a, b);
    }

    private static final class Frequency extends OrbitFigure {
        private static final double REACH = 0.02;

        @Override
        public double of(Waveforms waveforms) {
            return waveforms.frequency();
        }

        @Override
        double addGradient(Waveforms waveforms, double[] gradient) {
            return 1;
        }

        /** A few widths of a tank. */
        @Override
        double reach(double value) {
            return REACH * value;
        }

        @Override
        boolean meets(double value, double wanted, Accuracy accuracy) {
            return Math.abs(value / wanted - 1) <= MESHES * accuracy.frequency();
        }

        @Override
        String words(double value) {
            return String.format(Locale.ROOT, "the frequency is %.6g Hz", value);
        }
    }

    private static final class Amplitude extends OrbitFigure {
        private static final double REACH = 0.3;
        private static final double SMALLEST = 1e-9;

        private final int a;
        private final int b;
        private final int harmonic;

        Amplitude(int a, int b, int harmonic) {
            if (harmonic < 1) throw new IllegalArgumentException("harmonics count from 1, not " + harmonic);
            this.a = a;
            this.b = b;
            this.harmonic = harmonic;
        }

        @Override
        public double of(Waveforms waveforms) {
            return waveforms.amplitude(a, b, harmonic);
        }

        @Override
        double addGradient(Waveforms waveforms, double[] gradient) {
            double[] first = waveforms.coefficient(a, harmonic), second = waveforms.coefficient(b, harmonic);
            double re = first[0] - second[0], im = first[1] - second[1], size = Math.hypot(re, im);
            if (size == 0) return 0;
            Orbit orbit = waveforms.orbit();
            Waveforms.addCoefficientWeights(orbit, a, harmonic, 2 * re / size, 2 * im / size, gradient);
            Waveforms.addCoefficientWeights(orbit, b, harmonic, -2 * re / size, -2 * im / size, gradient);
            return 0;
        }

        @Override
        double reach(double value) {
            return Math.max(SMALLEST, REACH * value);
        }

        @Override
        boolean meets(double value, double wanted, Accuracy accuracy) {
            return Math.abs(20 * Math.log10(value / wanted)) <= MESHES * accuracy.harmonicDecibels();
        }

        @Override
        String words(double value) {
            return String.format(Locale.ROOT, "the amplitude is %.4g", value);
        }
    }

    private static final class Mean extends OrbitFigure {
        private static final double REACH = 1;
        private static final double SHARE = 1e-3;

        private final int a;
        private final int b;

        Mean(int a, int b) {
            this.a = a;
            this.b = b;
        }

        @Override
        public double of(Waveforms waveforms) {
            return waveforms.mean(a) - waveforms.mean(b);
        }

        @Override
        double addGradient(Waveforms waveforms, double[] gradient) {
            Waveforms.addCoefficientWeights(waveforms.orbit(), a, 0, 1, 0, gradient);
            Waveforms.addCoefficientWeights(waveforms.orbit(), b, 0, -1, 0, gradient);
            return 0;
        }

        @Override
        double reach(double value) {
            return REACH;
        }

        @Override
        boolean meets(double value, double wanted, Accuracy accuracy) {
            return Math.abs(value - wanted) <= SHARE * accuracy.harmonicDecibels() * Math.max(1, Math.abs(wanted));
        }

        @Override
        String words(double value) {
            return String.format(Locale.ROOT, "the mean is %.4g", value);
        }
    }

    /** The gradient along an orbit as an array of its own, and ∂φ/∂f. */
    record Gradient(double[] weights, double byFrequency) {}

    Gradient gradient(Equations equations, Orbit orbit) {
        double[] weights = new double[orbit.x.length];
        double byFrequency = addGradient(new Waveforms(equations, orbit, 0), weights);
        return new Gradient(weights, byFrequency);
    }
}
