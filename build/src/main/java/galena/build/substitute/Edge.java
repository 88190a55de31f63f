package galena.build.substitute;

import galena.build.figure.Figure;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import java.util.function.DoublePredicate;

/** Where along one parameter a device stops working, found by halving the way by ratio; the end that works is given. */
final class Edge {
    private static final int HALVINGS = 5;

    private Edge() {}

    /**
     * @param inside a value that works, above zero as all of them are
     * @param outside as far as is asked
     * @param works solves one device
     * @param sign that people give the parameter
     * @param unit of it
     * @return the last value that works, its interval reaching to the first that does not; missing where even {@code outside} works
     */
    static Figure find(double inside, double outside, DoublePredicate works, int sign, Unit unit, String quantity) {
        if (works.test(outside))
            return new Figure.Missing(
                    quantity,
                    "works to " + Engineering.print(sign * outside, unit, 2).replace('-', '−')
                            + ", as far as was tried");
        double good = inside, bad = outside;
        for (int k = 0; k < HALVINGS; k++) {
            double middle = Math.sqrt(good * bad);
            if (works.test(middle)) good = middle;
            else bad = middle;
        }
        return new Figure.Known(
                good, unit, Math.min(good, bad), Math.max(good, bad), "solved on both sides", quantity, "");
    }

    /** The value that works, or how far was tried. */
    static double value(Figure edge, double tried) {
        return edge instanceof Figure.Known known ? known.value() : tried;
    }
}
