package galena.trade.device;

import galena.trade.source.Basis;
import java.util.ArrayList;
import java.util.List;

/** Collects the steps of one derivation. */
final class Working {
    private final List<Step> steps = new ArrayList<>();

    /** Notes a value that follows from printed rows and hands it back. */
    double from(List<Printed> rows, String parameter, double value, String unit, String formula, String assumption) {
        Basis basis =
                Basis.weakest(rows.stream().map(row -> row.provenance().basis()).toList());
        steps.add(new Step(parameter, value, unit, formula, assumption, rows, basis));
        return value;
    }

    /** Notes a default of the trade and hands it back. */
    double byDefault(String parameter, double value, String unit, String why) {
        steps.add(new Step(parameter, value, unit, "default", why, List.of(), Basis.COMMON_PRACTICE));
        return value;
    }

    List<Step> steps() {
        return List.copyOf(steps);
    }
}
