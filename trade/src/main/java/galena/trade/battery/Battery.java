package galena.trade.battery;

import galena.trade.source.Basis;

/**
 * Equal cells or blocks in series.
 *
 * @param count how many
 * @param cell each of them
 */
public record Battery(int count, Cell cell) {
    private static final double HOUR = 3600;
    private static final int BISECTIONS = 60;

    public Battery {
        if (count < 1) throw new IllegalArgumentException("a battery has one cell or more, not " + count);
    }

    /** A pack by its name, as "6xAA-NiMH", "9V-alkaline" or "2x18650-Li-ion". */
    public static BatteryLookup named(String name) {
        return BatteryNames.find(name);
    }

    /** "6xAA-NiMH". */
    public String name() {
        return count == 1 ? cell.name() : count + "x" + cell.name();
    }

    public double nominalVoltage() {
        return count * cell.nominalVoltage();
    }

    /** Usual end of discharge (V). */
    public double endVoltage() {
        return count * cell.endVoltage();
    }

    /**
     * @param charge state of charge, 1 full to 0 spent
     * @return electromotive force (V)
     */
    public double emf(double charge) {
        return count * cell.emfAfter(used(charge));
    }

    /**
     * @param charge state of charge, 1 full to 0 spent
     * @return internal resistance (Ω)
     */
    public double resistance(double charge) {
        return count * cell.resistanceAfter(used(charge));
    }

    /**
     * @param charge state of charge, 1 full to 0 spent
     * @param current drawn (A)
     * @return voltage at the terminals (V)
     */
    public double terminalVoltage(double charge, double current) {
        return emf(charge) - current * resistance(charge);
    }

    /** Delivered charge (C) at a current (A). */
    public Cell.Capacity capacity(double current) {
        return cell.capacityAt(positive(current));
    }

    /** What the figures rest on. */
    public Basis basis() {
        return cell.basis();
    }

    /**
     * Hours at a steady current until the terminals fall to a voltage.
     *
     * @param current drawn (A)
     * @param endVoltage (V)
     */
    public Endurance runtime(double current, double endVoltage) {
        Cell.Capacity capacity = capacity(current);
        double fresh = terminalVoltage(1, current);
        if (fresh <= endVoltage) return new Endurance.TooLow(fresh);
        boolean spent = terminalVoltage(0, current) > endVoltage;
        double used = spent ? 1 : usedAt(current, endVoltage);
        double seconds = used / current;
        return new Endurance.Lasts(
                seconds * capacity.typical() / HOUR,
                seconds * capacity.low() / HOUR,
                seconds * capacity.high() / HOUR,
                used,
                spent,
                basis());
    }

    /** Terminal voltage falls with charge used, so bisection finds the one crossing. */
    private double usedAt(double current, double voltage) {
        double low = 0;
        double high = 1;
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = (low + high) / 2;
            if (terminalVoltage(1 - middle, current) > voltage) low = middle;
            else high = middle;
        }
        return (low + high) / 2;
    }

    private static double used(double charge) {
        if (!(charge >= 0 && charge <= 1)) {
            throw new IllegalArgumentException("state of charge lies from 0 to 1, not at " + charge);
        }
        return 1 - charge;
    }

    private static double positive(double current) {
        if (!(current > 0) || Double.isInfinite(current)) {
            throw new IllegalArgumentException("a current drawn is positive, not " + current);
        }
        return current;
    }
}
