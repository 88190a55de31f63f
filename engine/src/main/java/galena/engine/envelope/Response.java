package galena.engine.envelope;

/**
 * The small-signal answer at one slow frequency, to a source's departure of Re e^(jωτ) units. Complex numbers are pairs {real,
 * imaginary}; a quantity's departure is Re(z e^(jωτ)).
 */
public final class Response {
    /** Below this share of a cycle's turn the phase's growth over one cycle is its rate. */
    private static final double STILL = 1e-12;

    private final Sidebands of;
    private final double slow;
    private final double[] cycleFrequency;
    private final double[][] charges;
    private final double[][] x;

    Response(Sidebands of, double slow, double[] cycleFrequency, double[][] charges, double[][] x) {
        this.of = of;
        this.slow = slow;
        this.cycleFrequency = cycleFrequency;
        this.charges = charges;
        this.x = x;
    }

    /** The slow frequency, Hz. */
    public double frequency() {
        return slow;
    }

    /** Departure of the oscillation's own frequency, Hz per unit: of the phase that is pinned. */
    public double[] oscillationFrequency() {
        double turn = 2 * Math.PI * slow / of.cycle().frequency;
        if (turn < STILL) return cycleFrequency.clone();
        // the phase gains T̂ e^(jωτ) over a cycle: jω/(e^(jωT) − 1) in place of 1/T
        double[] ratio = divided(new double[] {0, turn}, new double[] {Math.cos(turn) - 1, Math.sin(turn)});
        return times(cycleFrequency, ratio);
    }

    /** Departure of the slow mean of x_a − x_b per unit. */
    public double[] mean(int a, int b) {
        return lines(a, b, 0)[0];
    }

    /**
     * The lines that the slow frequency puts beside harmonic h of x_a − x_b, as the oscillation's phase sees them: of c + U
     * e^(jωτ) + L e^(−jωτ), with c the complex peak amplitude of the harmonic.
     *
     * @return {U, L}
     */
    public double[][] lines(int a, int b, int h) {
        Layout layout = of.layout();
        double turn = 2 * Math.PI * slow / of.cycle().frequency;
        double[] first = first(a, b, turn);
        double upRe = 0, upIm = 0, lowRe = 0, lowIm = 0;
        for (int k = 0; k < layout.intervals(); k++) {
            for (int g = 0; g < Cubic.NODES; g++) {
                double phase = Cubic.phase(layout, k, g), weight = Cubic.weight(layout, k, g);
                double re = Cubic.at(layout, x[0], first[0], a, b, k, g);
                double im = Cubic.at(layout, x[1], first[1], a, b, k, g);
                double back = turn * phase, c = Math.cos(back), s = Math.sin(back);
                double atRe = re * c + im * s, atIm = im * c - re * s;
                double angle = 2 * Math.PI * h * phase, cos = Math.cos(angle), sin = Math.sin(angle);
                upRe += weight * (atRe * cos + atIm * sin);
                upIm += weight * (atIm * cos - atRe * sin);
                lowRe += weight * (atRe * cos - atIm * sin);
                lowIm += weight * (-atIm * cos - atRe * sin);
            }
        }
        return new double[][] {{upRe, upIm}, {lowRe, lowIm}};
    }

    /** x_a − x_b at the cycle's start: that at the end of the cycle before. */
    private double[] first(int a, int b, double turn) {
        Layout layout = of.layout();
        int last = layout.at(layout.intervals() - 1, Layout.S - 1);
        double re = x[0][last + a] - x[0][last + b], im = x[1][last + a] - x[1][last + b];
        double c = Math.cos(turn), s = Math.sin(turn);
        return new double[] {re * c + im * s, im * c - re * s};
    }

    /**
     * Amplitude and frequency modulation of harmonic h of x_a − x_b, per unit.
     *
     * @throws IllegalArgumentException when there is no such harmonic to be modulated
     */
    public Modulation modulation(int a, int b, int h) {
        double[] carrier = of.harmonic(a, b, h);
        if (carrier[0] == 0 && carrier[1] == 0) throw new IllegalArgumentException("no carrier to be modulated");
        double[][] lines = lines(a, b, h);
        double[] up = divided(lines[0], carrier), low = divided(lines[1], carrier);
        double[] depth = {up[0] + low[0], up[1] - low[1]};
        // phase (U/c − (L/c)*)/j; its rate jω phase / 2π is in Hz
        double[] skew = {up[0] - low[0], up[1] + low[1]};
        double[] own = oscillationFrequency();
        double[] swing = {h * own[0] + slow * skew[0], h * own[1] + slow * skew[1]};
        return new Modulation(depth, swing);
    }

    /**
     * Per unit of the source, as complex numbers.
     *
     * @param amplitude relative departure of the amplitude
     * @param frequency departure of the frequency, Hz
     */
    public record Modulation(double[] amplitude, double[] frequency) {
        public Modulation {
            amplitude = amplitude.clone();
            frequency = frequency.clone();
        }

        @Override
        public double[] amplitude() {
            return amplitude.clone();
        }

        @Override
        public double[] frequency() {
            return frequency.clone();
        }

        /** Depth per unit. */
        public double depth() {
            return Math.hypot(amplitude[0], amplitude[1]);
        }

        /** Peak swing per unit, Hz. */
        public double swing() {
            return Math.hypot(frequency[0], frequency[1]);
        }
    }

    double[][] charges() {
        return charges;
    }

    double[][] x() {
        return x;
    }

    double[] cycleFrequency() {
        return cycleFrequency;
    }

    private static double[] times(double[] p, double[] q) {
        return new double[] {p[0] * q[0] - p[1] * q[1], p[0] * q[1] + p[1] * q[0]};
    }

    private static double[] divided(double[] p, double[] q) {
        double square = q[0] * q[0] + q[1] * q[1];
        return new double[] {(p[0] * q[0] + p[1] * q[1]) / square, (p[1] * q[0] - p[0] * q[1]) / square};
    }
}
