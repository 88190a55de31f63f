package galena.engine.steady;

import galena.engine.linear.Balanced;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.hipparchus.complex.Complex;

/**
 * How small disturbances of an orbit grow or die: the eigenvalues of the monodromy matrix on the consistent subspace, as
 * multipliers per period and as exponents per second. A free-running orbit has one trivial multiplier, a shift in time; it is
 * told from the others by its vector, the known rate of change of the charges, and not by being near 1, where a large coupling
 * capacitor or a quartz resonator puts others. Each error bound is the difference to the same multiplier on the coarser mesh.
 *
 * @param modes without the trivial one, the most growing first
 * @param trivial the trivial multiplier as found, 1 for an exact orbit and for driven circuits, which have none
 * @param frequency of the orbit, Hz
 */
public record Floquet(List<Mode> modes, double trivial, double frequency) {
    private static final double ROUNDING = 1e-13;
    /** Multipliers smaller than this die within a period or two and are of no further interest. */
    private static final double GONE = 1e-6;

    /** The trivial multiplier is 1 but for the mesh's error; anything far below dies and is no shift in time. */
    private static final double PERSISTS = 0.3;

    public Floquet {
        modes = List.copyOf(modes);
    }

    /**
     * One disturbance.
     *
     * @param re real part of the multiplier
     * @param im imaginary part
     * @param exponent growth in 1/s: f · ln |multiplier|
     * @param beat frequency of its beat against the carrier, Hz: f · |arg| / 2π
     * @param bound error bound of the exponent, 1/s
     */
    public record Mode(double re, double im, double exponent, double beat, double bound) {
        /** Magnitude of the multiplier. */
        public double size() {
            return Math.hypot(re, im);
        }
    }

    /** What the exponents say together. */
    public enum Stability {
        STABLE,
        UNSTABLE,
        /** Some exponent is zero to within its bound. */
        UNDECIDED
    }

    public Stability stability() {
        Stability verdict = Stability.STABLE;
        for (Mode mode : modes) {
            if (mode.exponent - mode.bound > 0) return Stability.UNSTABLE;
            if (mode.exponent + mode.bound > 0) verdict = Stability.UNDECIDED;
        }
        return verdict;
    }

    /** Magnitude of the largest multiplier beside the trivial one; 0 when all are gone within a period. */
    public double largest() {
        return modes.stream().mapToDouble(Mode::size).max().orElse(0);
    }

    /**
     * A monodromy matrix and the direction of its trivial vector; the direction is empty for a driven circuit.
     *
     * @param scale of each charge, so that squares are energies: one over the root of its own capacitance or inductance
     */
    record Monodromy(DMatrixRMaj matrix, double[] drift, double[] scale) {}

    static Floquet of(Monodromy fine, Monodromy coarse, double frequency) {
        Split a = split(fine), b = split(coarse);
        List<Mode> modes = new ArrayList<>();
        for (Complex value : a.others) {
            double size = value.norm();
            if (size < GONE) continue;
            double nearest = b.others.stream()
                    .mapToDouble(other -> other.subtract(value).norm())
                    .min()
                    .orElse(1);
            double bound = frequency * (nearest + ROUNDING) / size;
            double beat = frequency * Math.abs(value.getArgument()) / (2 * Math.PI);
            modes.add(new Mode(value.getReal(), value.getImaginary(), frequency * Math.log(size), beat, bound));
        }
        modes.sort(Comparator.comparingDouble(m -> -m.exponent()));
        return new Floquet(modes, a.trivial, frequency);
    }

    private record Split(double trivial, List<Complex> others) {}

    /** Takes out the eigenvalue whose vector lies along the drift. */
    private static Split split(Monodromy monodromy) {
        Balanced eigen = new Balanced(monodromy.matrix);
        Complex[] values = eigen.values();
        int trivial = -1;
        double best = 0;
        for (int k = 0; k < values.length && monodromy.drift.length > 0; k++) {
            double[] vector = eigen.vector(k);
            // rows of charge that depend on each other leave vectors of multiplier zero that lie anyhow
            if (vector.length == 0 || values[k].norm() < PERSISTS) continue;
            double along = alignment(vector, monodromy);
            if (along > best) {
                best = along;
                trivial = k;
            }
        }
        List<Complex> others = new ArrayList<>();
        for (int k = 0; k < values.length; k++) if (k != trivial) others.add(values[k]);
        return new Split(trivial < 0 ? 1 : values[trivial].getReal(), others);
    }

    /** |cos| of the angle between a vector and the drift, in the norm of energy. */
    private static double alignment(double[] vector, Monodromy monodromy) {
        double dot = 0, a = 0, b = 0;
        for (int k = 0; k < monodromy.drift.length; k++) {
            double v = vector[k] * monodromy.scale[k], d = monodromy.drift[k] * monodromy.scale[k];
            dot += v * d;
            a += v * v;
            b += d * d;
        }
        return a == 0 || b == 0 ? 0 : Math.abs(dot) / Math.sqrt(a * b);
    }
}
