package galena.trade.device;

import galena.trade.source.Basis;
import java.util.List;

/**
 * How one model parameter was found.
 *
 * @param parameter its name in words, as in a build
 * @param value in SI
 * @param unit SI unit, empty for a pure number
 * @param formula the equation used
 * @param assumption what was taken for granted, or empty
 * @param rows printed rows that went in
 * @param basis weakest of the rows; common practice where a default stands in
 */
public record Step(
        String parameter,
        double value,
        String unit,
        String formula,
        String assumption,
        List<Printed> rows,
        Basis basis) {
    public Step {
        rows = List.copyOf(rows);
        if (!Double.isFinite(value)) throw new IllegalArgumentException(parameter + " is " + value);
    }
}
