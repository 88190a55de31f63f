package galena.trade.device;

import static galena.trade.device.DeviceQuantity.CUTOFF_VOLTAGE;
import static galena.trade.device.DeviceQuantity.FORWARD_TRANSCONDUCTANCE;
import static galena.trade.device.DeviceQuantity.SATURATION_CURRENT;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.random.RandomGenerator;

/**
 * The JFETs that one type number can be: IDSS and transconductance within print, pinch-off from both, the printed gate
 * voltage at its own test current and the cutoff limits kept. Combinations outside never come out, so weakest-with-
 * strongest corners that no device has don't exist here.
 *
 * <p>Distribution: even in the logarithms of IDSS and gfs over what is admitted, as if drawn over the printed rectangle
 * with inadmissible draws thrown away. It is reached by turning the cumulated admissible width around instead of by
 * trial, so one pair of numbers in [0, 1) always makes the same device.
 *
 * <p>Weak and strong: the mask fixes β = IDSS/VP², so one chip family runs along |VP| = √(IDSS/β) as the channel gets
 * deeper; both ends of that line that still meet the sheet are the corners, with β of the typical device.
 */
public final class JfetSpread {
    private static final int CELLS = 2000;

    private final JfetData device;
    private final JfetModel typical;
    private final double testVoltage;
    private final double lowCurrent;
    private final double highCurrent;
    private final double lowGfs;
    private final double highGfs;
    private final OptionalDouble gfsCurrent;
    private final double[] cumulated = new double[CELLS + 1];

    private JfetSpread(JfetData device, JfetModel typical) {
        this.device = device;
        this.typical = typical;
        Range idss = device.saturationCurrent();
        Range gfs = device.forwardTransconductance();
        this.testVoltage = JfetDerivation.testVoltage(idss);
        this.lowCurrent = idss.min().orElseThrow();
        this.highCurrent = idss.max().orElseThrow();
        this.lowGfs = lowest(gfs);
        this.highGfs = highest(gfs);
        this.gfsCurrent = gfs.isKnown() ? gfs.rows().get(0).condition("ID") : OptionalDouble.empty();
        for (int i = 0; i < CELLS; i++) {
            cumulated[i + 1] = cumulated[i] + Math.max(0, width(currentAt((i + 0.5) / CELLS)));
        }
    }

    static ModelAnswer<JfetSpread> of(JfetData device) {
        ModelAnswer<JfetModel> typical = device.typical();
        if (typical instanceof NotDerivable<JfetModel> missing) {
            return new NotDerivable<>(missing.type(), missing.reason(), missing.wanted());
        }
        Derived<JfetModel> derived = (Derived<JfetModel>) typical;
        Range idss = device.saturationCurrent();
        if (idss.min().isEmpty() || idss.max().isEmpty()) {
            return new NotDerivable<>(
                    device.type(),
                    "IDSS is not printed with both limits, so its spread is unknown",
                    Set.of(SATURATION_CURRENT));
        }
        JfetSpread spread = new JfetSpread(device, derived.model());
        if (spread.unbounded()) {
            return new NotDerivable<>(
                    device.type(),
                    "neither transconductance nor gate voltage is limited on both sides, so pinch-off has no bounds",
                    Set.of(FORWARD_TRANSCONDUCTANCE, CUTOFF_VOLTAGE));
        }
        if (!(spread.cumulated[CELLS] > 0)) {
            return new NotDerivable<>(
                    device.type(),
                    "no square-law device meets the printed IDSS, transconductance and gate voltages together: one of "
                            + "the rows is wrong",
                    Set.of(SATURATION_CURRENT, FORWARD_TRANSCONDUCTANCE, CUTOFF_VOLTAGE));
        }
        return new Derived<>(spread, derived.steps());
    }

    /** Where only a typical and one limit are printed the other lies as far off by ratio. */
    private static double lowest(Range gfs) {
        if (gfs.min().isPresent()) return gfs.min().getAsDouble();
        if (gfs.typ().isPresent() && gfs.max().isPresent()) {
            return gfs.typ().getAsDouble() * gfs.typ().getAsDouble() / gfs.max().getAsDouble();
        }
        return 0;
    }

    private static double highest(Range gfs) {
        if (gfs.max().isPresent()) return gfs.max().getAsDouble();
        if (gfs.typ().isPresent() && gfs.min().isPresent()) {
            return gfs.typ().getAsDouble() * gfs.typ().getAsDouble() / gfs.min().getAsDouble();
        }
        return Double.POSITIVE_INFINITY;
    }

    private boolean unbounded() {
        double middle = Math.sqrt(lowCurrent * highCurrent);
        return lowPinchOff(middle) <= 0 || Double.isInfinite(highPinchOff(middle));
    }

    /** IDSS (A) at a fraction 0..1 of the printed span, even by ratio. */
    private double currentAt(double fraction) {
        return lowCurrent * Math.pow(highCurrent / lowCurrent, fraction);
    }

    /** Admissible width of ln|VP| at one IDSS; negative where none is. */
    private double width(double idss) {
        double low = lowPinchOff(idss);
        double high = highPinchOff(idss);
        return low > 0 && high > 0 ? Math.log(high / low) : Double.NEGATIVE_INFINITY;
    }

    private double lowPinchOff(double idss) {
        double low = pinchOffFrom(idss, highGfs);
        for (Range limit : List.of(device.cutoffVoltage(), device.gateSourceVoltage())) {
            if (limit.min().isPresent()) low = Math.max(low, limit.min().getAsDouble() / reach(limit, idss));
        }
        return low;
    }

    private double highPinchOff(double idss) {
        double high = pinchOffFrom(idss, lowGfs);
        for (Range limit : List.of(device.cutoffVoltage(), device.gateSourceVoltage())) {
            if (limit.max().isPresent()) high = Math.min(high, limit.max().getAsDouble() / reach(limit, idss));
        }
        return high;
    }

    private double pinchOffFrom(double idss, double gfs) {
        return 2 * Math.sqrt(idss * gfsCurrent.orElse(idss)) / gfs;
    }

    /** |VGS|/|VP| at the test current of a gate-voltage row: 1 − √(ID/IDSS). */
    private static double reach(Range limit, double idss) {
        double current = limit.rows().get(0).condition("ID").orElse(0);
        return Math.max(1e-3, 1 - Math.sqrt(current / idss));
    }

    /**
     * Whether a device of this IDSS (A) and this transconductance (S), under the sheet's own conditions, meets every
     * printed limit.
     */
    public boolean admits(double idss, double gfs) {
        double pinchOff = pinchOffFrom(idss, gfs);
        return idss >= lowCurrent
                && idss <= highCurrent
                && pinchOff >= lowPinchOff(idss)
                && pinchOff <= highPinchOff(idss);
    }

    /** One device at random. */
    public JfetModel draw(RandomGenerator random) {
        return at(random.nextDouble(), random.nextDouble());
    }

    /**
     * The device that belongs to a point of the unit square, as quasi-random sequences want it.
     *
     * @param first in [0, 1], grows with IDSS
     * @param second in [0, 1], grows with pinch-off
     */
    public JfetModel at(double first, double second) {
        if (!(first >= 0 && first <= 1 && second >= 0 && second <= 1)) {
            throw new IllegalArgumentException("a draw takes two numbers from 0 to 1, not " + first + ", " + second);
        }
        double wanted = first * cumulated[CELLS];
        int cell = 0;
        while (cell < CELLS - 1 && cumulated[cell + 1] < wanted) cell++;
        while (cumulated[cell + 1] == cumulated[cell]) cell++;
        double within = (wanted - cumulated[cell]) / (cumulated[cell + 1] - cumulated[cell]);
        double idss = currentAt((cell + Math.min(1, Math.max(0, within))) / CELLS);
        if (!(width(idss) >= 0)) idss = currentAt((cell + 0.5) / CELLS);
        double low = lowPinchOff(idss);
        return model(idss, low * Math.pow(highPinchOff(idss) / low, second));
    }

    /** Smallest channel that the sheet admits: lowest current and transconductance. */
    public JfetModel weak() {
        return corner(lowCurrent);
    }

    /** The typical device, moved to the nearest pinch-off that every printed limit admits. */
    public JfetModel typical() {
        return corner(typical.currentAtZeroGate(testVoltage));
    }

    /** Largest channel that the sheet admits. */
    public JfetModel strong() {
        return corner(highCurrent);
    }

    /** Weak, typical, strong. */
    public List<JfetModel> corners() {
        return List.of(weak(), typical(), strong());
    }

    /** The admissible IDSS nearest to the wanted one, with the pinch-off nearest to the chip family's own. */
    private JfetModel corner(double wanted) {
        double idss = wanted;
        if (width(idss) < 0) {
            double nearest = Double.POSITIVE_INFINITY;
            for (int i = 0; i < CELLS; i++) {
                double candidate = currentAt((i + 0.5) / CELLS);
                double distance = Math.abs(Math.log(candidate / wanted));
                if (width(candidate) >= 0 && distance < nearest) {
                    nearest = distance;
                    idss = candidate;
                }
            }
        }
        double beta = typical.currentAtZeroGate(testVoltage) / (typical.pinchOff() * typical.pinchOff());
        double pinchOff = Math.sqrt(idss / beta);
        return model(idss, Math.min(highPinchOff(idss), Math.max(lowPinchOff(idss), pinchOff)));
    }

    private JfetModel model(double idss, double pinchOff) {
        double saturation = idss / (1 + typical.channelLengthModulation() * testVoltage);
        return typical.withChannelAs(saturation, Math.copySign(pinchOff, typical.pinchOff()));
    }
}
