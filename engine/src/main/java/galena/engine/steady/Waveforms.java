package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.equations.Evaluation;
import galena.engine.part.Coil;
import galena.engine.part.Part;
import galena.engine.part.Resonator;

/**
 * A solved period, read out: values in time, Fourier coefficients, mean powers. Fourier coefficients integrate the cubics
 * against the exponential by Gauss's rule in every interval, so that they keep the method's order 5. Immutable.
 */
public final class Waveforms {
    private static final double[] GAUSS_NODES = {
        0.5 - 0.4530899229693320, 0.5 - 0.2692346550528416, 0.5, 0.5 + 0.2692346550528416, 0.5 + 0.4530899229693320
    };
    private static final double[] GAUSS_WEIGHTS = {
        0.1184634425280945, 0.2393143352496832, 0.2844444444444444, 0.2393143352496832, 0.1184634425280945
    };
    private static final double[][] GAUSS_BASIS = gaussBasis();

    private final Equations equations;
    private final Orbit orbit;
    private final double drive;

    /** @param drive share of the sources' alternating parts that was heard */
    Waveforms(Equations equations, Orbit orbit, double drive) {
        this.equations = equations;
        this.orbit = orbit;
        this.drive = drive;
    }

    private static double[][] gaussBasis() {
        double[][] basis = new double[GAUSS_NODES.length][Orbit.POINTS.length];
        for (int g = 0; g < basis.length; g++) Orbit.basis(GAUSS_NODES[g], basis[g]);
        return basis;
    }

    /** Hz. */
    public double frequency() {
        return orbit.frequency;
    }

    public Equations equations() {
        return equations;
    }

    /** Share of the sources' alternating parts that was heard: 1 for a driven circuit, 0 for a free-running one. */
    public double drive() {
        return drive;
    }

    /** Intervals of the mesh. */
    public int intervals() {
        return orbit.intervals();
    }

    /** The mesh on the period, 0 first, 1 last. A copy. */
    public double[] mesh() {
        return orbit.mesh.clone();
    }

    /** Mean over the period of an unknown. */
    public double mean(int unknown) {
        return coefficient(unknown, 0)[0];
    }

    /** Mean of a net's voltage, V. */
    public double meanVoltage(String net) {
        return mean(equations.net(net));
    }

    /** Mean current into the first pin of a coil, battery, resonator or voltage source, A. */
    public double meanCurrent(String part) {
        return mean(currentOf(part));
    }

    private int currentOf(String part) {
        return equations
                .current(part)
                .orElseThrow(() -> new IllegalArgumentException(part + " has no current of its own"));
    }

    /** Peak amplitude of harmonic h (1 the fundamental) of the voltage between two nets, V. */
    public double voltageAmplitude(String net, String against, int h) {
        return amplitude(equations.net(net), equations.net(against), h);
    }

    /** Peak amplitude of harmonic h of the current of a coil, battery, resonator or voltage source, A. */
    public double currentAmplitude(String part, int h) {
        return amplitude(currentOf(part), 0, h);
    }

    /** Peak amplitude of harmonic h of x_a − x_b; unknown 0 is ground. */
    public double amplitude(int a, int b, int h) {
        double[] first = coefficient(a, h), second = coefficient(b, h);
        return 2 * Math.hypot(first[0] - second[0], first[1] - second[1]);
    }

    /** ∫ x e^(−2πi h t) over the period as {re, im}: the mean for h = 0, half the complex amplitude otherwise. */
    public double[] coefficient(int unknown, int h) {
        if (unknown == 0) return new double[2];
        double re = 0, im = 0;
        for (int k = 0; k < orbit.intervals(); k++) {
            double width = orbit.width(k);
            for (int g = 0; g < GAUSS_NODES.length; g++) {
                double value = width * GAUSS_WEIGHTS[g] * orbit.interpolate(k, GAUSS_BASIS[g], unknown);
                if (h == 0) {
                    re += value;
                    continue;
                }
                double angle = 2 * Math.PI * h * (orbit.mesh[k] + width * GAUSS_NODES[g]);
                re += value * Math.cos(angle);
                im -= value * Math.sin(angle);
            }
        }
        return new double[] {re, im};
    }

    /** Peak amplitudes by unknown and harmonic, the fundamental first: as {@link #amplitude} against ground, all at once. */
    double[][] levels(int harmonics) {
        double[][] re = new double[orbit.stride][harmonics], im = new double[orbit.stride][harmonics];
        double[] cos = new double[harmonics], sin = new double[harmonics];
        for (int k = 0; k < orbit.intervals(); k++) {
            double width = orbit.width(k);
            for (int g = 0; g < GAUSS_NODES.length; g++) {
                turns(2 * Math.PI * (orbit.mesh[k] + width * GAUSS_NODES[g]), cos, sin);
                for (int j = 1; j < orbit.stride; j++) {
                    double value = width * GAUSS_WEIGHTS[g] * orbit.interpolate(k, GAUSS_BASIS[g], j);
                    double[] r = re[j], i = im[j];
                    for (int h = 0; h < harmonics; h++) {
                        r[h] += value * cos[h];
                        i[h] += value * sin[h];
                    }
                }
            }
        }
        for (int j = 1; j < orbit.stride; j++) {
            for (int h = 0; h < harmonics; h++) re[j][h] = 2 * Math.hypot(re[j][h], im[j][h]);
        }
        return re;
    }

    /** Cosines and sines of the angle's multiples, by turning on. */
    private static void turns(double angle, double[] cos, double[] sin) {
        double c = Math.cos(angle), s = Math.sin(angle), x = 1, y = 0;
        for (int h = 0; h < cos.length; h++) {
            double turned = x * c - y * s;
            y = x * s + y * c;
            x = turned;
            cos[h] = x;
            sin[h] = y;
        }
    }

    /**
     * Adds the weights with which stage values enter re · Re(c) + im · Im(c) of a coefficient c to a gradient laid out like an orbit.
     */
    static void addCoefficientWeights(Orbit orbit, int unknown, int h, double re, double im, double[] gradient) {
        if (unknown == 0) return;
        for (int k = 0; k < orbit.intervals(); k++) {
            double width = orbit.width(k);
            for (int g = 0; g < GAUSS_NODES.length; g++) {
                double angle = 2 * Math.PI * h * (orbit.mesh[k] + width * GAUSS_NODES[g]);
                double weight = width * GAUSS_WEIGHTS[g] * (re * Math.cos(angle) - im * Math.sin(angle));
                double[] basis = GAUSS_BASIS[g];
                gradient[orbit.start(k) + unknown] += weight * basis[0];
                for (int j = 0; j < Radau.STAGES; j++) gradient[orbit.at(k, j) + unknown] += weight * basis[j + 1];
            }
        }
    }

    /** An unknown at a phase of the period, 0 to 1. */
    public double at(int unknown, double phase) {
        double t = phase - Math.floor(phase);
        int low = 0, high = orbit.intervals() - 1;
        while (low < high) {
            int middle = (low + high + 1) / 2;
            if (orbit.mesh[middle] <= t) low = middle;
            else high = middle - 1;
        }
        double[] weights = new double[Orbit.POINTS.length];
        Orbit.basis((t - orbit.mesh[low]) / orbit.width(low), weights);
        return orbit.interpolate(low, weights, unknown);
    }

    /** All unknowns at a phase, ground first. */
    public double[] at(double phase) {
        double[] x = new double[orbit.stride];
        for (int j = 1; j < x.length; j++) x[j] = at(j, phase);
        return x;
    }

    /** Largest minus smallest value of an unknown at the mesh's points. */
    public double swing(int unknown) {
        return orbit.swings()[unknown];
    }

    /** Smallest and largest value of x_a − x_b at the mesh's points. */
    public double[] range(int a, int b) {
        double low = Double.POSITIVE_INFINITY, high = Double.NEGATIVE_INFINITY;
        for (int p = 0; p < orbit.x.length; p += orbit.stride) {
            double v = orbit.x[p + a] - orbit.x[p + b];
            low = Math.min(low, v);
            high = Math.max(high, v);
        }
        return new double[] {low, high};
    }

    /** Mean watts that a part takes up; below zero for what it delivers. */
    public double meanPower(String part) {
        Evaluation work = equations.newEvaluation();
        double watts = 0;
        for (int k = 0; k < orbit.intervals(); k++) {
            for (int j = 0; j < Radau.STAGES; j++) {
                int at = orbit.at(k, j);
                double here = equations.power(part, orbit.x, at, work);
                if (drive != 0) {
                    double time = orbit.phase(k, j) / orbit.frequency;
                    here += drive * equations.departurePower(part, time, orbit.x, at);
                }
                watts += Radau.WEIGHTS[j] * orbit.width(k) * here;
            }
        }
        return watts;
    }

    /** Mean watts that sources deliver. */
    public double deliveredPower() {
        return powers().delivered;
    }

    /** |what all parts take up together| over what is delivered: zero for an exact orbit. */
    public double powerImbalance() {
        return powers().imbalance();
    }

    /**
     * Mean watts.
     *
     * @param sum over all parts
     * @param delivered by those that deliver
     */
    record Powers(double sum, double delivered) {
        double imbalance() {
            return delivered == 0 ? 0 : Math.abs(sum) / delivered;
        }
    }

    Powers powers() {
        double sum = 0, delivered = 0;
        for (Part part : equations.circuit().parts()) {
            double watts = meanPower(part.name());
            sum += watts;
            delivered += Math.max(0, -watts);
        }
        return new Powers(sum, delivered);
    }

    /** Volt-amperes that swing in the coils and resonators at the fundamental: ω Σ ½ L I². */
    public double circulatingPower() {
        double sum = 0;
        for (Part part : equations.circuit().parts()) {
            double henries;
            if (part instanceof Coil coil) henries = coil.inductance();
            else if (part instanceof Resonator resonator) henries = resonator.motionalInductance();
            else continue;
            double peak = currentAmplitude(part.name(), 1);
            sum += Math.PI * orbit.frequency * henries * peak * peak;
        }
        return sum;
    }

    Orbit orbit() {
        return orbit;
    }
}
