package galena.build.substitute;

import galena.build.quantity.Unit;
import galena.build.spread.Drawn;
import java.util.List;
import java.util.Optional;

/**
 * Standard values that may stand in place of a resistor's or a capacitor's own.
 *
 * @param part whose
 * @param value its own, SI
 * @param unit of it
 * @param low lowest value tried, step by step, that keeps the intent; its own if none does
 * @param high highest
 * @param nearest what the next values of E12 either way do
 * @param pair two usual parts that make the value, where it is not a usual one itself
 */
public record ValueRange(
        String part, double value, Unit unit, double low, double high, List<Step> nearest, Optional<Pair> pair) {
    public ValueRange {
        nearest = List.copyOf(nearest);
    }

    /**
     * @param value tried, SI
     * @param drawn how the build does with it, trimmed
     * @param failures of the intent beyond those the build has anyway, or what else has changed too much; empty if it will do
     */
    public record Step(double value, Drawn drawn, List<String> failures) {
        public Step {
            failures = List.copyOf(failures);
        }

        public boolean fits() {
            return failures.isEmpty();
        }
    }

    /**
     * @param first SI
     * @param second SI
     * @param parallel else in series
     * @param error of both together against the value, a fraction
     */
    public record Pair(double first, double second, boolean parallel, double error) {}
}
