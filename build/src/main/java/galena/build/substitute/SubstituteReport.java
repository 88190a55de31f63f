package galena.build.substitute;

import galena.build.figure.Figure;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What can stand in a part's place. */
public sealed interface SubstituteReport {
    /** The part asked about. */
    String part();

    /** What stands there, as written. */
    String now();

    /** Share of copies that meet every line with what stands there. */
    double goodNow();

    /**
     * Devices of the same kind, the best first.
     *
     * @param rows each device that was tried
     * @param window of parameters that work, or why there is none
     * @param notes what to know besides
     */
    record Devices(
            String part, String now, double goodNow, List<Row> rows, Optional<DeviceWindow> window, List<String> notes)
            implements SubstituteReport {
        public Devices {
            rows = List.copyOf(rows);
            notes = List.copyOf(notes);
        }
    }

    /**
     * One device in the place.
     *
     * @param fit whether it works
     * @param change the one value that goes with it, "Rs 2.2 kΩ → 1.5 kΩ"; empty where none is needed or none helps
     * @param yield share of copies that meet every line, with the change; empty where none could be solved
     * @param effects against what stands there now, in words
     */
    record Row(String type, Fit fit, String change, OptionalDouble yield, String effects) {}

    /** How a device serves. */
    enum Fit {
        AS_IT_IS("as it is"),
        WITH_A_CHANGE("with a change"),
        NOT("does not do");

        private final String words;

        Fit(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /**
     * Values for a passive part.
     *
     * @param range of single values that do as well; empty for coils
     * @param combinations of one part or two, nearest value first
     * @param notes what to know besides
     */
    record Values(
            String part,
            String now,
            double goodNow,
            Optional<ValueRange> range,
            List<Combination> combinations,
            List<String> notes)
            implements SubstituteReport {
        public Values {
            combinations = List.copyOf(combinations);
            notes = List.copyOf(notes);
        }
    }

    /**
     * One part or two.
     *
     * @param words "82 pF and 18 pF in parallel"
     * @param value of both
     * @param error against the value wanted, a fraction
     * @param effects against the value wanted, in words
     * @param yield share of copies that would meet every line
     */
    record Combination(String words, Figure value, double error, String effects, double yield) {}
}
