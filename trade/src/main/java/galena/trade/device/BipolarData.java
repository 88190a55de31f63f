package galena.trade.device;

import static galena.trade.device.DeviceQuantity.CURRENT_GAIN;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** A bipolar transistor. PNP figures are magnitudes, as sheets for the pair print them. */
public record BipolarData(Sheet sheet) implements Device {
    /** Collector current of small transmitter stages (A), for which gain is taken unless another is asked for. */
    public static final double USUAL_COLLECTOR_CURRENT = 1e-3;

    /** Max over min of hFE where no row prints both: the usual width of an unselected type. */
    static final double USUAL_GAIN_RATIO = 3;

    public BipolarData {
        if (sheet.family() != Family.NPN && sheet.family() != Family.PNP) {
            throw new IllegalArgumentException(sheet.type() + " is no bipolar transistor");
        }
    }

    /**
     * hFE with all three figures, from the row whose collector current is nearest by ratio. A missing maximum is the
     * minimum times the ratio of the row that prints both (else a typical twice as far by ratio, else 3); a missing
     * typical is the geometric mean. Unknown if no row is printed.
     *
     * @param collectorCurrent (A)
     */
    public Range currentGain(double collectorCurrent) {
        List<Printed> rows = all(CURRENT_GAIN);
        if (rows.isEmpty()) return Range.NONE;
        Printed nearest = rows.get(0);
        for (Printed row : rows) {
            if (distance(row, collectorCurrent) < distance(nearest, collectorCurrent)) nearest = row;
        }
        return completed(nearest, rows);
    }

    private static double distance(Printed row, double current) {
        return Math.abs(Math.log(row.condition("IC").orElse(USUAL_COLLECTOR_CURRENT) / current));
    }

    private static Range completed(Printed row, List<Printed> rows) {
        List<Printed> used = new ArrayList<>(List.of(row));
        double ratio = USUAL_GAIN_RATIO;
        if (row.min().isPresent() && row.max().isPresent()) {
            ratio = row.max().getAsDouble() / row.min().getAsDouble();
        } else if (row.min().isPresent() && row.typ().isPresent()) {
            ratio = Math.pow(row.typ().getAsDouble() / row.min().getAsDouble(), 2);
        } else if (row.max().isPresent() && row.typ().isPresent()) {
            ratio = Math.pow(row.max().getAsDouble() / row.typ().getAsDouble(), 2);
        } else {
            for (Printed other : rows) {
                if (other.min().isEmpty() || other.max().isEmpty()) continue;
                ratio = other.max().getAsDouble() / other.min().getAsDouble();
                used.add(other);
                break;
            }
        }
        double min;
        if (row.min().isPresent()) min = row.min().getAsDouble();
        else if (row.max().isPresent()) min = row.max().getAsDouble() / ratio;
        else min = row.typ().orElseThrow() / Math.sqrt(ratio);
        double max = row.max().orElse(min * ratio);
        double typ = row.typ().orElse(Math.sqrt(min * max));
        return new Range(OptionalDouble.of(min), OptionalDouble.of(typ), OptionalDouble.of(max), used);
    }

    /** Parameters of the typical device at {@link #USUAL_COLLECTOR_CURRENT}. */
    public ModelAnswer<BipolarModel> typical() {
        return typical(USUAL_COLLECTOR_CURRENT);
    }

    /**
     * Parameters of the typical device.
     *
     * @param collectorCurrent (A) at which it is to be used; decides the row for current gain
     */
    public ModelAnswer<BipolarModel> typical(double collectorCurrent) {
        if (!(collectorCurrent > 0)) {
            throw new IllegalArgumentException("a collector current is positive, not " + collectorCurrent);
        }
        return new BipolarDerivation(this).typical(collectorCurrent);
    }

    /**
     * The same device with lowest, typical and highest gain.
     *
     * @param collectorCurrent (A)
     */
    public ModelAnswer<List<BipolarModel>> corners(double collectorCurrent) {
        ModelAnswer<BipolarModel> typical = typical(collectorCurrent);
        if (typical instanceof NotDerivable<BipolarModel> missing) {
            return new NotDerivable<>(missing.type(), missing.reason(), missing.wanted());
        }
        Derived<BipolarModel> derived = (Derived<BipolarModel>) typical;
        Range gain = currentGain(collectorCurrent);
        return new Derived<>(
                List.of(
                        derived.model().withForwardBeta(gain.min().orElseThrow()),
                        derived.model(),
                        derived.model().withForwardBeta(gain.max().orElseThrow())),
                derived.steps());
    }
}
