package galena.trade.coil;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * ∫∫ f(|x − y|) dx dy over two stretches of one axis, for an f with at most a logarithm at 0: how coaxial bands of
 * current or charge act on each other. The double integral is the single one of f times the stretch on which x − y =
 * t, a trapezoid; each straight piece of it is taken by Gauss's rule, with points crowded towards t = 0 by t = L·s³.
 */
public final class Bands {
    private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(20);
    private static final int POINTS = RULE.getNumberOfPoints();

    private Bands() {}

    /**
     * @param f even kernel, given positive distances only
     * @param a start of x, below b
     * @param b end of x
     * @param c start of y, below d
     * @param d end of y
     */
    public static double interaction(DoubleUnaryOperator f, double a, double b, double c, double d) {
        double tiny = 1e-12 * Math.max(b - a, d - c);
        double[] knots = {a - d, b - d, a - c, b - c, 0};
        for (int i = 0; i < 4; i++) if (Math.abs(knots[i]) < tiny) knots[i] = 0;
        Arrays.sort(knots);
        double sum = 0;
        for (int i = 0; i < 4; i++) {
            double from = knots[i], to = knots[i + 1];
            if (to - from > tiny && from >= a - d - tiny && to <= b - c + tiny) sum += piece(f, from, to, a, b, c, d);
        }
        return sum;
    }

    private static double piece(DoubleUnaryOperator f, double from, double to, double a, double b, double c, double d) {
        double sum = 0, length = to - from;
        for (int i = 0; i < POINTS; i++) {
            double s = (RULE.getPoint(i) + 1) / 2, weight = RULE.getWeight(i) / 2 * length;
            double t;
            if (from == 0) {
                t = length * s * s * s;
                weight *= 3 * s * s;
            } else if (to == 0) {
                t = -length * s * s * s;
                weight *= 3 * s * s;
            } else {
                t = from + length * s;
            }
            double overlap = Math.min(b, d + t) - Math.max(a, c + t);
            sum += weight * overlap * f.applyAsDouble(Math.abs(t));
        }
        return sum;
    }
}
