package galena.build.predict;

import galena.engine.steady.OrbitDerivatives.Derivative;
import galena.engine.steady.Waveforms;

/** One number read from a steady oscillation, with its derivative by a parameter. */
interface Readout {
    double value(Waveforms waveforms);

    double slope(Waveforms waveforms, Derivative derivative);

    /** Whether the number is a size, above zero, whose spread is even by ratio. */
    default boolean isSize() {
        return false;
    }

    /** Hz. */
    static Readout frequency() {
        return new Readout() {
            @Override
            public double value(Waveforms waveforms) {
                return waveforms.frequency();
            }

            @Override
            public double slope(Waveforms waveforms, Derivative derivative) {
                return derivative.frequency();
            }
        };
    }

    /** Peak amplitude of a harmonic of x_a − x_b. */
    static Readout amplitude(int a, int b, int harmonic) {
        return new Readout() {
            @Override
            public double value(Waveforms waveforms) {
                return waveforms.amplitude(a, b, harmonic);
            }

            @Override
            public double slope(Waveforms waveforms, Derivative derivative) {
                return derivative.amplitude(a, b, harmonic);
            }

            @Override
            public boolean isSize() {
                return true;
            }
        };
    }

    /** A harmonic against the fundamental, dB. */
    static Readout decibels(int a, int b, int harmonic) {
        return new Readout() {
            @Override
            public double value(Waveforms waveforms) {
                return 20 * Math.log10(waveforms.amplitude(a, b, harmonic) / waveforms.amplitude(a, b, 1));
            }

            @Override
            public double slope(Waveforms waveforms, Derivative derivative) {
                double relative = derivative.amplitude(a, b, harmonic) / waveforms.amplitude(a, b, harmonic)
                        - derivative.amplitude(a, b, 1) / waveforms.amplitude(a, b, 1);
                return 20 / Math.log(10) * relative;
            }
        };
    }

    /** Sign times the mean of an unknown. */
    static Readout mean(int unknown, int sign) {
        return new Readout() {
            @Override
            public double value(Waveforms waveforms) {
                return sign * waveforms.mean(unknown);
            }

            @Override
            public double slope(Waveforms waveforms, Derivative derivative) {
                return sign * derivative.mean(unknown);
            }
        };
    }
}
