package galena.bench.measure;

import galena.signal.Estimate;
import java.util.function.ToDoubleFunction;

/**
 * The interval of a result from those of independent inputs: each input is moved to its two ends by itself, and the moves
 * of the result add as squares (ISO/IEC Guide 98-3, clause 5.1, with differences in place of derivatives).
 */
final class Propagation {
    private Propagation() {}

    /** The result at the inputs' values, with its interval. */
    static Estimate of(ToDoubleFunction<double[]> result, Estimate... inputs) {
        double[] x = new double[inputs.length];
        for (int k = 0; k < x.length; k++) x[k] = inputs[k].value();
        double value = result.applyAsDouble(x), up = 0, down = 0;
        for (int k = 0; k < x.length; k++) {
            double[] moved = x.clone();
            moved[k] = inputs[k].low();
            double a = result.applyAsDouble(moved) - value;
            moved[k] = inputs[k].high();
            double b = result.applyAsDouble(moved) - value;
            up += Math.pow(Math.max(0, Math.max(a, b)), 2);
            down += Math.pow(Math.min(0, Math.min(a, b)), 2);
        }
        return new Estimate(value, value - Math.sqrt(down), value + Math.sqrt(up));
    }
}
