package galena.trade.coil;

import galena.trade.wire.SkinEffect;
import org.hipparchus.complex.Complex;
import org.hipparchus.util.CombinatoricsUtils;

/**
 * Eddy currents in parallel round wires that all feel one another, in the plane across them.
 *
 * <p>About wire i, at w = z + jr, the vector potential from elsewhere is µ₀·Re Σ eₙ·(u/b)ⁿ, u = w − wᵢ; each harmonic
 * calls up µ₀·Re Σ sₙ·(b/u)ⁿ with sₙ = ρₙ·conj(eₙ), ρₙ = {@link SkinEffect#reflection}. What j sends about itself
 * arrives about i as eₘ += sₙ·qⁿ(−q)ᵐ·C(n+m−1, m), q = b/(wᵢ − wⱼ); a line current I as (I/2π)(−q)ᵐ/m. Lord
 * Rayleigh's method for cylinders in rows, Phil. Mag. 34 (1892), with skin effect in ρₙ. First harmonics are driven
 * by the true ring fields that the caller gives; curvature is left out of the higher ones, which fall off within a
 * few wires.
 *
 * <p>Phasors in time multiply only ρₙ, so each unknown is kept as two plane-complex numbers, in phase and in
 * quadrature. The damped fixed point takes 15 rounds at wide spacing, a hundred for bare wires that touch; it is not
 * trusted to settle but watched, and the answer is held to the balance of power.
 */
final class Multipoles {
    /** Harmonics kept between near wires: the fifth changes the loss by under 0.5 % at pitch 1.1 diameters. */
    private static final int ORDER = 5;

    /** b/distance below which only dipoles are exchanged: the next term is down by its square. */
    private static final double NEAR = 0.15;

    private static final double DAMPING = 0.7;
    private static final double SETTLED = 1e-6;
    private static final double BALANCE = 1e-3;
    private static final int ROUNDS = 2000;
    private static final double[][] CHOOSE = choose();

    private final int wires;
    private final double[] reflectionRe = new double[ORDER];
    private final double[] reflectionIm = new double[ORDER];
    private final double x;
    /** b/(wᵢ − wⱼ), real and imaginary, for every ordered pair; 0 on the diagonal. */
    private final double[] qRe;

    private final double[] qIm;
    /** Four numbers for each wire and harmonic: in-phase re, im, quadrature re, im. */
    private final double[] source;

    private final double[] arriving;
    private final double[] sent;

    /**
     * @param z positions across, along the axis (m)
     * @param r positions across, away from the axis (m)
     * @param hz field of everything else at each wire for one ampere, along the axis (A/m)
     * @param hr the same, outwards
     * @param b radius of the conductors (m)
     * @param x b·√2/skin depth
     */
    Multipoles(double[] z, double[] r, double[] hz, double[] hr, double b, double x) {
        this.wires = z.length;
        this.x = x;
        qRe = new double[wires * wires];
        qIm = new double[wires * wires];
        source = new double[wires * ORDER * 4];
        arriving = new double[source.length];
        sent = new double[source.length];
        for (int n = 1; n <= ORDER; n++) {
            Complex rho = SkinEffect.reflection(n, x);
            reflectionRe[n - 1] = rho.getReal();
            reflectionIm[n - 1] = rho.getImaginary();
        }
        for (int i = 0; i < wires; i++) {
            for (int j = 0; j < wires; j++) {
                if (i != j) inverseDistance(i * wires + j, z[i] - z[j], r[i] - r[j], b);
            }
            source[i * ORDER * 4] = -b * hr[i];
            source[i * ORDER * 4 + 1] = -b * hz[i];
            for (int j = 0; j < wires; j++) addLineCurrent(i, i * wires + j);
        }
    }

    private void inverseDistance(int pair, double dz, double dr, double b) {
        double square = dz * dz + dr * dr;
        qRe[pair] = b * dz / square;
        qIm[pair] = -b * dr / square;
    }

    /**
     * Harmonics 2 and up of another wire's own current, one ampere: their sum over a row falls off too slowly to cut.
     */
    private void addLineCurrent(int i, int pair) {
        double re = -qRe[pair], im = -qIm[pair], pRe = re, pIm = im;
        for (int m = 2; m <= ORDER; m++) {
            double next = pRe * re - pIm * im;
            pIm = pRe * im + pIm * re;
            pRe = next;
            source[(i * ORDER + m - 1) * 4] += pRe / (2 * Math.PI * m);
            source[(i * ORDER + m - 1) * 4 + 1] += pIm / (2 * Math.PI * m);
        }
    }

    /**
     * What the eddy currents do, for each wire.
     *
     * @param addedLoss over its direct-current loss at one ampere
     * @param inductance that they add, below zero (H/m)
     */
    record Outcome(double[] addedLoss, double[] inductance) {}

    /**
     * Solves, and holds the heat in the wires against what the terminals deliver: by reciprocity the eddy currents
     * react on the current as it drives them, so a metre of wire shows jωµ₀·2πn·ρₙ·(source·field), whose real part is
     * their loss.
     */
    Outcome solve() {
        int round = 0;
        while (exchange() > SETTLED) {
            if (++round > ROUNDS)
                throw new IllegalStateException("eddy currents of " + wires + " wires did not settle");
        }
        double[] heat = new double[wires], inductance = new double[wires];
        double burnt = 0, delivered = 0;
        for (int i = 0; i < wires; i++) {
            for (int n = 1; n <= ORDER; n++) {
                int at = (i * ORDER + n - 1) * 4;
                double square = 0;
                for (int k = 0; k < 4; k++) square += arriving[at + k] * arriving[at + k];
                double inPhase = source[at] * arriving[at] + source[at + 1] * arriving[at + 1];
                double quadrature = source[at] * arriving[at + 2] + source[at + 1] * arriving[at + 3];
                double re = reflectionRe[n - 1], im = reflectionIm[n - 1], scale = 2 * Math.PI * n;
                heat[i] -= Math.PI * x * x * scale * square * im;
                delivered -= Math.PI * x * x * scale * (re * quadrature + im * inPhase);
                inductance[i] += SkinEffect.MU_0 * scale * (re * inPhase - im * quadrature);
            }
            burnt += heat[i];
        }
        if (Math.abs(burnt - delivered) > BALANCE * burnt) {
            throw new IllegalStateException("eddy currents burn " + burnt + " where " + delivered + " is delivered");
        }
        return new Outcome(heat, inductance);
    }

    /** One round: all send, all receive, all answer. Returns the greatest change over the greatest answer. */
    private double exchange() {
        System.arraycopy(source, 0, arriving, 0, source.length);
        for (int i = 0; i < wires; i++) {
            for (int j = 0; j < wires; j++) {
                double re = qRe[i * wires + j], im = qIm[i * wires + j];
                if (re * re + im * im >= NEAR * NEAR) addNear(i, j, re, im);
                else addDipole(i, j, re, im);
            }
        }
        double change = 0, greatest = 0;
        for (int at = 0; at < sent.length; at += 4) {
            int n = at / 4 % ORDER;
            double rr = reflectionRe[n], ri = reflectionIm[n];
            double a = arriving[at], b = -arriving[at + 1], c = arriving[at + 2], d = -arriving[at + 3];
            change = Math.max(change, answer(at, rr * a - ri * c));
            change = Math.max(change, answer(at + 1, rr * b - ri * d));
            change = Math.max(change, answer(at + 2, rr * c + ri * a));
            change = Math.max(change, answer(at + 3, rr * d + ri * b));
            for (int k = 0; k < 4; k++) greatest = Math.max(greatest, Math.abs(sent[at + k]));
        }
        return greatest == 0 ? 0 : change / greatest;
    }

    private double answer(int at, double wanted) {
        double step = wanted - sent[at];
        sent[at] += DAMPING * step;
        return Math.abs(step);
    }

    private void addDipole(int i, int j, double re, double im) {
        addProduct(i * ORDER * 4, j * ORDER * 4, -(re * re - im * im), -2 * re * im);
    }

    private void addNear(int i, int j, double re, double im) {
        double nRe = 1, nIm = 0; // qⁿ
        for (int n = 1; n <= ORDER; n++) {
            double t = nRe * re - nIm * im;
            nIm = nRe * im + nIm * re;
            nRe = t;
            double mRe = nRe, mIm = nIm; // qⁿ(−q)ᵐ
            for (int m = 1; m <= ORDER; m++) {
                double u = -(mRe * re - mIm * im);
                mIm = -(mRe * im + mIm * re);
                mRe = u;
                double c = CHOOSE[n + m - 1][m];
                addProduct((i * ORDER + m - 1) * 4, (j * ORDER + n - 1) * 4, c * mRe, c * mIm);
            }
        }
    }

    private void addProduct(int to, int from, double re, double im) {
        arriving[to] += sent[from] * re - sent[from + 1] * im;
        arriving[to + 1] += sent[from] * im + sent[from + 1] * re;
        arriving[to + 2] += sent[from + 2] * re - sent[from + 3] * im;
        arriving[to + 3] += sent[from + 2] * im + sent[from + 3] * re;
    }

    private static double[][] choose() {
        double[][] c = new double[2 * ORDER][2 * ORDER];
        for (int n = 0; n < 2 * ORDER; n++) {
            for (int m = 0; m <= n; m++) c[n][m] = CombinatoricsUtils.binomialCoefficientDouble(n, m);
        }
        return c;
    }
}
