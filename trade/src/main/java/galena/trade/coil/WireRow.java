package galena.trade.coil;

import static java.lang.Math.PI;

import galena.trade.wire.OutOfRange;
import galena.trade.wire.SkinEffect;
import org.hipparchus.complex.Complex;
import org.hipparchus.complex.ComplexField;
import org.hipparchus.linear.Array2DRowFieldMatrix;
import org.hipparchus.linear.ArrayFieldVector;
import org.hipparchus.linear.FieldLUDecomposition;
import org.hipparchus.linear.FieldMatrix;
import org.hipparchus.linear.FieldVector;
import org.hipparchus.util.CombinatoricsUtils;

/**
 * One endless flat row of equal round wires with all field on one side: the middle of a long single-layer coil, or the
 * turns of a toroid. The same harmonics as {@link Multipoles}, with Rayleigh's sums over the row in closed form, 2ζ(n +
 * m)/pᵐ⁺ⁿ: the odd ones are driven by the mean field 1/(2p), the even ones by the neighbours' currents.
 */
public final class WireRow {
    private static final int ORDER = 10;

    private WireRow() {}

    /**
     * Loss that the neighbours add in each wire, over its direct-current loss.
     *
     * @param wireDiameter bare (m)
     * @param pitch centre to centre, at least the diameter (m)
     * @param x diameter/(√2·skin depth), see {@link SkinEffect#argument}
     */
    public static double addedLoss(double wireDiameter, double pitch, double x) {
        double h = OutOfRange.require("wire diameter/pitch", wireDiameter / pitch, 1e-6, 1, "Wires can't overlap.") / 2;
        FieldMatrix<Complex> matrix = new Array2DRowFieldMatrix<>(ComplexField.getInstance(), ORDER, ORDER);
        FieldVector<Complex> drive = new ArrayFieldVector<>(ComplexField.getInstance(), ORDER);
        for (int m = 1; m <= ORDER; m++) {
            for (int n = 1; n <= ORDER; n++) {
                double coupling = (n + m) % 2 != 0
                        ? 0
                        : CombinatoricsUtils.binomialCoefficientDouble(n + m - 1, m)
                                * 2
                                * zeta(n + m)
                                * Math.pow(h, n + m);
                Complex sent = SkinEffect.reflection(n, x).multiply(coupling);
                matrix.setEntry(m - 1, n - 1, (m == n ? Complex.ONE : Complex.ZERO).subtract(sent));
            }
            double own = m == 1 ? h / 2 : m % 2 == 0 ? 2 * zeta(m) * Math.pow(h, m) / (2 * PI * m) : 0;
            drive.setEntry(m - 1, new Complex(own));
        }
        FieldVector<Complex> e = new FieldLUDecomposition<>(matrix).getSolver().solve(drive);
        double added = 0;
        for (int n = 1; n <= ORDER; n++) {
            double size = e.getEntry(n - 1).norm();
            added -= 2
                    * PI
                    * PI
                    * x
                    * x
                    * n
                    * size
                    * size
                    * SkinEffect.reflection(n, x).getImaginary();
        }
        return added;
    }

    /** Riemann's ζ at 2 and up: the sum to 40 and its tail by Euler and Maclaurin. */
    private static double zeta(int s) {
        int last = 40;
        double sum = Math.pow(last, 1 - s) / (s - 1) - Math.pow(last, -s) / 2 + s * Math.pow(last, -s - 1) / 12;
        for (int k = last; k >= 1; k--) sum += Math.pow(k, -s);
        return sum;
    }
}
