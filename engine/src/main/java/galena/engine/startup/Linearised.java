package galena.engine.startup;

import galena.engine.equations.Equations;
import galena.engine.equations.Evaluation;
import galena.engine.equations.Pattern;
import galena.engine.linear.Balanced;
import galena.engine.linear.ComplexPencil;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;
import org.hipparchus.complex.Complex;
import org.jspecify.annotations.Nullable;

/**
 * The equations linearised at a point, as dense matrices, and their natural modes: eigenvalues of (G + σC)⁻¹C for a real shift
 * σ, which turns the infinite ones (C is singular) into zeros; each oscillating pair is then polished by inverse iteration at
 * its own shift (G. H. Golub and C. F. Van Loan, Matrix Computations, 4th ed., §7.6 and §7.7).
 */
public final class Linearised {
    /** Around the medium wave; any value of that order serves, the polishing removes its trace. */
    private static final double SHIFT = 2 * Math.PI * 1e6;

    private static final double LOWEST = 2 * Math.PI * 10;
    private static final double HIGHEST = 2 * Math.PI * 20e9;
    private static final int POLISHES = 5;
    private static final double POLISHED = 1e-12;

    private final Equations equations;
    private final int n;
    private final double[] g;
    private final double[] c;

    private Linearised(Equations equations, double[] g, double[] c) {
        this.equations = equations;
        this.n = equations.size();
        this.g = g;
        this.c = c;
    }

    /** @param x where; unknowns by number, ground first */
    public static Linearised at(Equations equations, double[] x) {
        Evaluation e = equations.newEvaluation();
        equations.evaluate(x, 0, e);
        int n = equations.size();
        double[] g = new double[n * n], c = new double[n * n];
        Pattern pattern = equations.pattern();
        for (int k = 1; k < pattern.entries(); k++) {
            int at = (pattern.row(k) - 1) * n + pattern.column(k) - 1;
            g[at] += e.g[k];
            c[at] += e.c[k];
        }
        return new Linearised(equations, g, c);
    }

    /** The same with a conductance (S) added between two unknowns; 0 is ground. */
    public Linearised loaded(int a, int b, double siemens) {
        double[] changed = g.clone();
        if (a > 0) changed[(a - 1) * n + a - 1] += siemens;
        if (b > 0) changed[(b - 1) * n + b - 1] += siemens;
        if (a > 0 && b > 0) {
            changed[(a - 1) * n + b - 1] -= siemens;
            changed[(b - 1) * n + a - 1] -= siemens;
        }
        return new Linearised(equations, changed, c);
    }

    /** Solves G x + jωC x = b at a frequency (Hz); vectors by unknown, ground first. Returns {real, imaginary}. */
    public double[][] respond(double frequency, double[] b) {
        ComplexPencil pencil = new ComplexPencil(n, g, c);
        double[] re = new double[n], im = new double[n];
        double[] rhs = Arrays.copyOfRange(b, 1, n + 1);
        if (!pencil.factor(0, 2 * Math.PI * frequency)) {
            throw new ArithmeticException("an undamped resonance lies exactly at " + frequency + " Hz");
        }
        pencil.solve(rhs, new double[n], re, im);
        return new double[][] {grounded(re), grounded(im)};
    }

    /** Oscillating modes between 10 Hz and 20 GHz, the most growing for its frequency first. */
    public List<Mode> modes() {
        List<Mode> modes = new ArrayList<>();
        for (Complex lambda : finiteEigenvalues()) {
            if (lambda.getImaginary() < LOWEST || lambda.getImaginary() > HIGHEST) continue;
            if (!turns(lambda)) continue;
            Mode mode = polish(lambda.getReal(), lambda.getImaginary());
            if (mode != null && modes.stream().noneMatch(m -> same(m, mode))) modes.add(mode);
        }
        modes.sort(Comparator.comparingDouble(m -> -m.growth() / m.angular()));
        return modes;
    }

    private static boolean same(Mode a, Mode b) {
        return Math.hypot(a.growth() - b.growth(), a.angular() - b.angular()) < 1e-9 * a.angular();
    }

    /** Growth rates, 1/s, of what runs off from the operating point without oscillating: all that {@link #modes} leaves out. */
    public double[] runaways() {
        return finiteEigenvalues().stream()
                .filter(l -> !turns(l) && l.getReal() > 1 && l.getReal() < 1e12)
                .mapToDouble(Complex::getReal)
                .toArray();
    }

    /** False for what grows or dies so fast for its frequency that nobody would see an oscillation. */
    private static boolean turns(Complex lambda) {
        return Math.abs(lambda.getReal()) <= 5 * Math.abs(lambda.getImaginary());
    }

    private List<Complex> finiteEigenvalues() {
        DMatrixRMaj shifted = new DMatrixRMaj(n, n), charge = new DMatrixRMaj(n, n), ratio = new DMatrixRMaj(n, n);
        for (int k = 0; k < n * n; k++) {
            shifted.data[k] = g[k] + SHIFT * c[k];
            charge.data[k] = c[k];
        }
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.lu(n);
        solver.setA(shifted);
        solver.solve(charge, ratio);
        List<Complex> finite = new ArrayList<>();
        for (Complex mu : new Balanced(ratio).values()) {
            double size = mu.norm();
            if (size < 1e-15 / SHIFT) continue;
            finite.add(new Complex(SHIFT, 0).subtract(mu.reciprocal()));
        }
        return finite;
    }

    /** Inverse iteration from an estimate; null when it runs away to another eigenvalue or none. */
    private @Nullable Mode polish(double re, double im) {
        ComplexPencil pencil = new ComplexPencil(n, g, c);
        double growth = re, angular = im;
        double[] v = start(), vi = new double[n], w = start(), wi = new double[n];
        double[] b = new double[n], bi = new double[n];
        for (int pass = 0; pass < POLISHES; pass++) {
            // a shift exactly on the eigenvalue is as good as singular; a relative 1e-13 beside it serves
            double off = pass == 0 ? 1e-6 : 1e-13;
            if (!pencil.factor(growth + off * angular, angular)) return null;
            for (int k = 0; k < 2; k++) {
                multiply(c, v, vi, b, bi, false);
                pencil.solve(b, bi, v, vi);
                normalise(v, vi);
                multiply(c, w, wi, b, bi, true);
                pencil.solveTransposed(b, bi, w, wi);
                normalise(w, wi);
            }
            double before = growth, beforeAngular = angular;
            double[] lambda = rayleigh(v, vi, w, wi);
            growth = lambda[0];
            angular = lambda[1];
            if (!(angular > 0) || !Double.isFinite(growth)) return null;
            if (Math.hypot(growth - before, angular - beforeAngular) < POLISHED * angular && pass > 0) break;
        }
        if (Math.abs(angular - im) > 0.05 * im) return null;
        return new Mode(growth, angular, grounded(v), grounded(vi), grounded(w), grounded(wi));
    }

    private double[] start() {
        double[] v = new double[n];
        for (int k = 0; k < n; k++) v[k] = (equations.isCurrent(k + 1) ? 1e-3 : 1) * (1 + 0.37 * ((k * 7) % 5));
        return v;
    }

    /** λ = −(wᵀGv)/(wᵀCv). */
    private double[] rayleigh(double[] v, double[] vi, double[] w, double[] wi) {
        double[] b = new double[n], bi = new double[n];
        multiply(g, v, vi, b, bi, false);
        double[] top = product(w, wi, b, bi);
        multiply(c, v, vi, b, bi, false);
        double[] bottom = product(w, wi, b, bi);
        double square = bottom[0] * bottom[0] + bottom[1] * bottom[1];
        return new double[] {
            -(top[0] * bottom[0] + top[1] * bottom[1]) / square, -(top[1] * bottom[0] - top[0] * bottom[1]) / square
        };
    }

    /** dλ/d(conductance between a and b) = −wᵀEv / wᵀCv, real and imaginary parts, 1/(s·S). */
    double[] sensitivityToConductance(Mode mode, int a, int b) {
        double[] v = tail(mode.re()), vi = tail(mode.im()), w = tail(mode.leftRe()), wi = tail(mode.leftIm());
        double[] cv = new double[n], cvi = new double[n];
        multiply(c, v, vi, cv, cvi, false);
        double[] bottom = product(w, wi, cv, cvi);
        double dv = mode.re()[a] - mode.re()[b], dvi = mode.im()[a] - mode.im()[b];
        double dw = mode.leftRe()[a] - mode.leftRe()[b], dwi = mode.leftIm()[a] - mode.leftIm()[b];
        double re = dw * dv - dwi * dvi, im = dw * dvi + dwi * dv;
        double square = bottom[0] * bottom[0] + bottom[1] * bottom[1];
        return new double[] {-(re * bottom[0] + im * bottom[1]) / square, -(im * bottom[0] - re * bottom[1]) / square};
    }

    /** Re dλ when a part's conduction is switched on from nothing, to first order: −Re(wᵀ G v / wᵀ C v) of the part alone, 1/s. */
    double growthBy(String part, double[] x, Mode mode, Evaluation work) {
        double[] cv = new double[n], cvi = new double[n];
        multiply(c, tail(mode.re()), tail(mode.im()), cv, cvi, false);
        double[] bottom = product(tail(mode.leftRe()), tail(mode.leftIm()), cv, cvi);
        double re = equations.conduction(part, x, mode.leftRe(), mode.re(), work)
                - equations.conduction(part, x, mode.leftIm(), mode.im(), work);
        double im = equations.conduction(part, x, mode.leftRe(), mode.im(), work)
                + equations.conduction(part, x, mode.leftIm(), mode.re(), work);
        double square = bottom[0] * bottom[0] + bottom[1] * bottom[1];
        return -(re * bottom[0] + im * bottom[1]) / square;
    }

    private void multiply(double[] matrix, double[] v, double[] vi, double[] out, double[] outIm, boolean transposed) {
        for (int row = 0; row < n; row++) {
            double sum = 0, sumIm = 0;
            for (int column = 0; column < n; column++) {
                double a = transposed ? matrix[column * n + row] : matrix[row * n + column];
                sum += a * v[column];
                sumIm += a * vi[column];
            }
            out[row] = sum;
            outIm[row] = sumIm;
        }
    }

    private static double[] product(double[] a, double[] ai, double[] b, double[] bi) {
        double re = 0, im = 0;
        for (int k = 0; k < a.length; k++) {
            re += a[k] * b[k] - ai[k] * bi[k];
            im += a[k] * bi[k] + ai[k] * b[k];
        }
        return new double[] {re, im};
    }

    private static void normalise(double[] v, double[] vi) {
        double top = 0;
        for (int k = 0; k < v.length; k++) top = Math.max(top, Math.hypot(v[k], vi[k]));
        for (int k = 0; k < v.length; k++) {
            v[k] /= top;
            vi[k] /= top;
        }
    }

    private static double[] grounded(double[] v) {
        double[] out = new double[v.length + 1];
        System.arraycopy(v, 0, out, 1, v.length);
        return out;
    }

    private static double[] tail(double[] v) {
        return Arrays.copyOfRange(v, 1, v.length);
    }
}
