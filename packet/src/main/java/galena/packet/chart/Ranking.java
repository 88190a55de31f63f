package galena.packet.chart;

import java.util.List;

/**
 * Causes by size, largest first, each a bar to the side it moves to.
 *
 * @param title what is ranked, in a few words
 * @param measure what the bars measure and in which unit, as in "carrier, kHz for 1 %"
 * @param unitSize how many SI units one of that unit is
 * @param bars at least one
 */
public record Ranking(String title, String measure, double unitSize, List<Bar> bars) {
    /**
     * @param name of the cause
     * @param value SI, to the left below zero and to the right above
     */
    public record Bar(String name, double value) {
        public Bar {
            if (!Double.isFinite(value)) throw new IllegalArgumentException(name + ": a bar must be finite");
        }
    }

    public Ranking {
        bars = List.copyOf(bars);
        if (bars.isEmpty()) throw new IllegalArgumentException("\"" + title + "\" has nothing to show");
        if (!(unitSize > 0)) throw new IllegalArgumentException("a unit's size is above zero, not " + unitSize);
    }

    /** The longest bar, SI; 1 where all are zero. */
    double longest() {
        double longest =
                bars.stream().mapToDouble(b -> Math.abs(b.value())).max().orElse(0);
        return longest == 0 ? 1 : longest;
    }

    /** Three figures of a value in the unit, with its sign. */
    String number(Bar bar) {
        double value = bar.value() / unitSize, size = Math.abs(value);
        if (size == 0) return "0";
        int decimals = Math.max(0, Math.min(6, 2 - (int) Math.floor(Math.log10(size))));
        String digits = new java.math.BigDecimal(size)
                .setScale(decimals, java.math.RoundingMode.HALF_EVEN)
                .toPlainString();
        return (value < 0 ? "−" : "+") + digits;
    }
}
