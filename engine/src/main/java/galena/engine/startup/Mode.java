package galena.engine.startup;

/**
 * One oscillating mode: everything moves as Re(v exp(λt)).
 *
 * @param growth Re λ, 1/s; below zero when it dies away
 * @param angular Im λ, rad/s, above zero
 * @param re real part of v, by unknown, ground first
 * @param im imaginary part of v
 * @param leftRe real part of w, where wᵀ(G + λC) = 0
 * @param leftIm imaginary part of w
 */
public record Mode(double growth, double angular, double[] re, double[] im, double[] leftRe, double[] leftIm) {
    /** Hz. */
    public double frequency() {
        return angular / (2 * Math.PI);
    }

    /** ω / (−2 Re λ): of a passive tank its loaded Q; below zero for a growing mode. */
    public double q() {
        return -angular / (2 * growth);
    }

    /** |v_a − v_b|² of two unknowns. */
    double squareAcross(int a, int b) {
        double r = re[a] - re[b], i = im[a] - im[b];
        return r * r + i * i;
    }
}
