package galena.trade.device;

import galena.trade.source.Provenance;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * One row of a data sheet.
 *
 * @param quantity what is printed
 * @param min minimum in SI, as signed in print
 * @param typ typical
 * @param max maximum
 * @param at test conditions in SI by the sheet's own symbol without subscript: VDS, VGS, VG1S, VG2S, VCE, VCB, VEB, VR,
 *     ID, IC, IB, IF, IG, f, and V1, V2 of a capacitance ratio
 * @param provenance sheet, date, basis, address, remark
 */
public record Printed(
        DeviceQuantity quantity,
        OptionalDouble min,
        OptionalDouble typ,
        OptionalDouble max,
        Map<String, Double> at,
        Provenance provenance) {
    public Printed {
        at = Map.copyOf(at);
        at.forEach((symbol, value) -> {
            boolean positive = symbol.startsWith("I") || symbol.equals("f");
            if (!Double.isFinite(value) || (positive && !(value > 0))) {
                throw new IllegalArgumentException(
                        quantity.word() + " at " + symbol + " = " + value + ": no possible test condition");
            }
        });
        if (min.isEmpty() && typ.isEmpty() && max.isEmpty()) {
            throw new IllegalArgumentException(quantity.word() + " has neither minimum, typical nor maximum");
        }
    }

    /** The figures of this row alone. */
    public Range range() {
        return new Range(min, typ, max, List.of(this));
    }

    /** A test condition in SI, none if the sheet doesn't state it. */
    public OptionalDouble condition(String symbol) {
        Double value = at.get(symbol);
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /**
     * A test condition in SI that has to be there.
     *
     * @throws IllegalStateException if the sheet doesn't state it
     */
    public double required(String symbol) {
        return condition(symbol)
                .orElseThrow(() -> new IllegalStateException(quantity.word() + " is printed without " + symbol));
    }
}
