package galena.trade.battery;

import galena.trade.source.Basis;
import galena.trade.source.Provenance;
import java.util.List;

/**
 * One cell, or a block sold as one piece.
 *
 * @param name size and chemistry, as "AA-NiMH"
 * @param cells electrochemical cells in series inside
 * @param nominalVoltage (V)
 * @param endVoltage usual end of discharge (V)
 * @param internalResistance fresh or charged (Ω)
 * @param resistanceGrowth internal resistance when spent over fresh; grows evenly with charge used between
 * @param curve voltage against charge used
 * @param curveCurrent current at which the curve stands (A)
 * @param capacities delivered charge at one or more currents, by rising current
 * @param sources every row it rests on
 */
public record Cell(
        String name,
        int cells,
        double nominalVoltage,
        double endVoltage,
        double internalResistance,
        double resistanceGrowth,
        List<CurvePoint> curve,
        double curveCurrent,
        List<Capacity> capacities,
        List<Provenance> sources) {
    /**
     * @param used part of the delivered charge that is gone, 0..1
     * @param voltage terminal voltage at the curve's current (V)
     */
    public record CurvePoint(double used, double voltage) {}

    /**
     * @param current at which it is delivered (A); 0 if the source doesn't say
     * @param low least (C)
     * @param typical (C)
     * @param high greatest (C)
     */
    public record Capacity(double current, double low, double typical, double high) {}

    public Cell {
        curve = List.copyOf(curve);
        capacities = List.copyOf(capacities);
        sources = List.copyOf(sources);
        if (curve.size() < 2
                || curve.get(0).used() != 0
                || curve.get(curve.size() - 1).used() != 1) {
            throw new IllegalArgumentException(name + ": the curve must run from full to spent");
        }
        for (int i = 1; i < curve.size(); i++) {
            if (curve.get(i).used() <= curve.get(i - 1).used()
                    || curve.get(i).voltage() >= curve.get(i - 1).voltage()) {
                throw new IllegalArgumentException(name + ": the curve must fall with charge used");
            }
        }
        if (capacities.isEmpty()) throw new IllegalArgumentException(name + ": capacity is missing");
    }

    /** The weakest basis of what it rests on. */
    public Basis basis() {
        return Basis.weakest(sources.stream().map(Provenance::basis).toList());
    }

    /** Internal resistance (Ω) with a part {@code used} of the charge gone. */
    double resistanceAfter(double used) {
        return internalResistance * (1 + (resistanceGrowth - 1) * used);
    }

    /** EMF (V): the curve's terminal voltage plus the drop of its own current. */
    double emfAfter(double used) {
        return interpolated(used) + curveCurrent * resistanceAfter(used);
    }

    private double interpolated(double used) {
        for (int i = 1; i < curve.size(); i++) {
            CurvePoint b = curve.get(i);
            if (used > b.used()) continue;
            CurvePoint a = curve.get(i - 1);
            return a.voltage() + (b.voltage() - a.voltage()) * (used - a.used()) / (b.used() - a.used());
        }
        throw new IllegalArgumentException("charge used lies from 0 to 1, not at " + used);
    }

    /** Delivered charge at a current, even in logarithms between the currents held; the end values beyond them. */
    Capacity capacityAt(double current) {
        Capacity below = capacities.get(0);
        for (Capacity above : capacities) {
            if (above.current() >= current) return between(below, above, current);
            below = above;
        }
        return below;
    }

    private static Capacity between(Capacity a, Capacity b, double current) {
        if (a.equals(b) || a.current() <= 0) return b;
        double part = Math.log(current / a.current()) / Math.log(b.current() / a.current());
        return new Capacity(
                current,
                power(a.low(), b.low(), part),
                power(a.typical(), b.typical(), part),
                power(a.high(), b.high(), part));
    }

    private static double power(double a, double b, double part) {
        return a * Math.pow(b / a, part);
    }
}
