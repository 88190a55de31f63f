package galena.engine.steady;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.ejml.data.Complex_F64;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;

/**
 * How small disturbances of an orbit grow or die: the eigenvalues of the monodromy matrix on the consistent subspace, as
 * multipliers per period and as exponents per second. A free-running orbit has one trivial multiplier, a shift in time; it is
 * told from the others by its vector, the known rate of change of the charges, and not by being near 1, where a large coupling
 * capacitor or a quartz resonator puts others. Each error bound is the difference to the same multiplier on the coarser mesh.
 *
 * @param modes without the trivial one, the most growing first
 * @param trivial the trivial multiplier as found, 1 for an exact orbit; NaN-free: 1 for driven circuits, which have none
 * @param frequency of the orbit, Hz
 */
public record Floquet(List<Mode> modes, double trivial, double frequency) {
    private static final double ROUNDING = 1e-13;

    /** A step of balancing that gains less is not taken, so that it ends. */
    private static final double WORTH_SCALING = 0.95;
    /** Multipliers smaller than this die within a period or two and are of no further interest. */
    private static final double GONE = 1e-6;

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

    /** A monodromy matrix and the direction of its trivial vector; the direction is empty for a driven circuit. */
    record Monodromy(DMatrixRMaj matrix, double[] drift) {}

    static Floquet of(Monodromy fine, Monodromy coarse, double frequency) {
        Split a = split(fine), b = split(coarse);
        List<Mode> modes = new ArrayList<>();
        for (Complex_F64 value : a.others) {
            double size = value.getMagnitude();
            if (size < GONE) continue;
            double nearest = b.others.stream()
                    .mapToDouble(o -> Math.hypot(o.real - value.real, o.imaginary - value.imaginary))
                    .min()
                    .orElse(1);
            double bound = frequency * (nearest + ROUNDING) / size;
            double beat = frequency * Math.abs(Math.atan2(value.imaginary, value.real)) / (2 * Math.PI);
            modes.add(new Mode(value.real, value.imaginary, frequency * Math.log(size), beat, bound));
        }
        modes.sort(Comparator.comparingDouble(m -> -m.exponent()));
        return new Floquet(modes, a.trivial, frequency);
    }

    private record Split(double trivial, List<Complex_F64> others) {}

    /** Takes out the eigenvalue whose vector lies along the drift. */
    private static Split split(Monodromy monodromy) {
        int n = monodromy.matrix.numRows;
        EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(n, true);
        DMatrixRMaj even = monodromy.matrix.copy();
        double[] scales = balance(even);
        if (!eigen.decompose(even)) {
            throw new ArithmeticException("the monodromy matrix has no eigenvalues");
        }
        int trivial = -1;
        double best = 0;
        for (int k = 0; k < n && monodromy.drift.length > 0; k++) {
            if (!eigen.getEigenvalue(k).isReal()) continue;
            double along = alignment(eigen.getEigenVector(k), scales, monodromy.drift);
            if (along > best) {
                best = along;
                trivial = k;
            }
        }
        List<Complex_F64> others = new ArrayList<>();
        for (int k = 0; k < n; k++) if (k != trivial) others.add(eigen.getEigenvalue(k));
        return new Split(trivial < 0 ? 1 : eigen.getEigenvalue(trivial).real, others);
    }

    /**
     * Evens out rows and columns by a similarity of powers of two, which rounds nothing: B. N. Parlett and C. Reinsch, Numer.
     * Math. 13 (1969) p. 293. Charges of picofarads beside flux linkages differ by 1e9, and without it the iteration may not
     * settle.
     *
     * @param a changed in place to D⁻¹·A·D
     * @return D's diagonal: an eigenvector of the old matrix is D times one of the new
     */
    static double[] balance(DMatrixRMaj a) {
        int n = a.numRows;
        double[] scales = new double[n];
        Arrays.fill(scales, 1);
        boolean changed = true;
        while (changed) {
            changed = false;
            for (int i = 0; i < n; i++) changed |= balance(a, i, scales);
        }
        return scales;
    }

    private static boolean balance(DMatrixRMaj a, int i, double[] scales) {
        double column = 0, row = 0;
        for (int k = 0; k < a.numRows; k++) {
            if (k == i) continue;
            column += Math.abs(a.get(k, i));
            row += Math.abs(a.get(i, k));
        }
        if (!(column > 0 && row > 0) || Double.isInfinite(column + row)) return false;
        double power = Math.rint(Math.log(row / column) / Math.log(4));
        double factor = Math.scalb(1.0, (int) power);
        if (column * factor + row / factor >= WORTH_SCALING * (column + row)) return false;
        scales[i] *= factor;
        for (int k = 0; k < a.numRows; k++) {
            a.set(k, i, a.get(k, i) * factor);
            a.set(i, k, a.get(i, k) / factor);
        }
        return true;
    }

    /** |cos| of the angle between a vector and the drift, each charge measured by its own drift. */
    private static double alignment(DMatrixRMaj vector, double[] scales, double[] drift) {
        double top = 0;
        for (double d : drift) top = Math.max(top, Math.abs(d));
        double dot = 0, a = 0, b = 0;
        for (int k = 0; k < drift.length; k++) {
            double scale = 1 / (Math.abs(drift[k]) + 1e-6 * top);
            double v = vector.get(k, 0) * scales[k] * scale, d = drift[k] * scale;
            dot += v * d;
            a += v * v;
            b += d * d;
        }
        return a == 0 || b == 0 ? 0 : Math.abs(dot) / Math.sqrt(a * b);
    }
}
