package galena.trade.device;

import galena.trade.source.Basis;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * All that is printed about one type number.
 *
 * @param type JEDEC or Pro Electron type number
 * @param family what it is
 * @param rows printed rows; of several rows for one quantity the first has preference
 * @param availability what is said about getting one, or empty; recalled unless a row says otherwise
 */
public record Sheet(String type, Family family, List<Printed> rows, String availability) {
    public Sheet {
        if (type.isBlank()) throw new IllegalArgumentException("a device needs a type number");
        rows = List.copyOf(rows);
        for (Printed row : rows) {
            try {
                joined(rows, row.quantity());
            } catch (IllegalArgumentException e) {
                throw new IllegalArgumentException(type + ", " + row.quantity().word() + ": " + e.getMessage(), e);
            }
        }
    }

    /** Rows of one quantity, first the preferred one. */
    public List<Printed> all(DeviceQuantity quantity) {
        return rows.stream().filter(row -> row.quantity() == quantity).toList();
    }

    /**
     * Minimum, typical and maximum of one quantity: each from the first row that prints it among the rows under the
     * test conditions of the first. Where sheets disagree the first rules.
     */
    public Range range(DeviceQuantity quantity) {
        return joined(rows, quantity);
    }

    private static Range joined(List<Printed> rows, DeviceQuantity quantity) {
        List<Printed> all =
                rows.stream().filter(row -> row.quantity() == quantity).toList();
        if (all.isEmpty()) return Range.NONE;
        List<Printed> alike =
                all.stream().filter(row -> row.at().equals(all.get(0).at())).toList();
        List<Printed> used = new ArrayList<>();
        OptionalDouble min = first(alike, Printed::min, used);
        OptionalDouble typ = first(alike, Printed::typ, used);
        OptionalDouble max = first(alike, Printed::max, used);
        return new Range(min, typ, max, used);
    }

    private static OptionalDouble first(
            List<Printed> rows, Function<Printed, OptionalDouble> figure, List<Printed> used) {
        for (Printed row : rows) {
            OptionalDouble value = figure.apply(row);
            if (value.isEmpty()) continue;
            if (!used.contains(row)) used.add(row);
            return value;
        }
        return OptionalDouble.empty();
    }

    /** The weakest basis among the rows. */
    public Basis basis() {
        return Basis.weakest(rows.stream().map(row -> row.provenance().basis()).toList());
    }
}
