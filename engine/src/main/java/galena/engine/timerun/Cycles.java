package galena.engine.timerun;

import java.util.ArrayList;
import java.util.List;

/** Finds the peaks of a voltage and its crossings of a level while it runs, on the cubic of each step. */
final class Cycles implements TimeRun.Listener {
    /** Peaks nearer than this share of a cycle belong to one cycle, and the higher counts. */
    private static final double ONE_CYCLE = 0.6;
    /** Without a peak for so many cycles it is taken for dead, and its value is noted as it stands. */
    private static final double DEAD = 2;

    private static final int BISECTIONS = 40;

    private final int a;
    private final int b;
    private final double rest;
    private final double cycle;
    private final double[] c = new double[4];
    final List<Double> times = new ArrayList<>();
    final List<Double> peaks = new ArrayList<>();
    final List<Double> crossings = new ArrayList<>();
    private double risingAtEnd;

    /** @param cycle expected, s */
    Cycles(int a, int b, double rest, double cycle) {
        this.a = a;
        this.b = b;
        this.rest = rest;
        this.cycle = cycle;
    }

    @Override
    public boolean step(Passage passage) {
        passage.cubic(a, b, c);
        c[0] -= rest;
        // a peak at a step's end is flat in neither cubic to the last digit: the slope's change of sign tells it
        if (risingAtEnd > 0 && c[1] <= 0) peak(passage.start(), c[0]);
        double[] flat = flat();
        for (double share : flat)
            if (share > 0 && share < 1 && bends(share) < 0) peak(passage.time(share), value(share));
        risingAtEnd = c[1] + 2 * c[2] + 3 * c[3];
        double end = value(1);
        if (c[0] < 0 && end >= 0) crossings.add(passage.time(crossing()));
        while (passage.end() - lastTime() > DEAD * cycle) note(lastTime() + cycle, Math.max(0, end));
        return true;
    }

    private double lastTime() {
        return times.isEmpty() ? 0 : times.get(times.size() - 1);
    }

    private void peak(double time, double height) {
        if (!(height > 0)) return;
        int last = times.size() - 1;
        if (last < 0 || time - times.get(last) > ONE_CYCLE * cycle) {
            note(time, height);
        } else if (height > peaks.get(last)) {
            times.set(last, time);
            peaks.set(last, height);
        }
    }

    private void note(double time, double height) {
        times.add(time);
        peaks.add(height);
    }

    private double value(double s) {
        return c[0] + s * (c[1] + s * (c[2] + s * c[3]));
    }

    private double bends(double s) {
        return 2 * c[2] + 6 * c[3] * s;
    }

    /** Where the cubic is flat; outside the step where it is nowhere. */
    private double[] flat() {
        double p = 3 * c[3], q = 2 * c[2], r = c[1], root = q * q - 4 * p * r;
        if (!(root >= 0)) return new double[0];
        double sum = -0.5 * (q + Math.copySign(Math.sqrt(root), q));
        return new double[] {p == 0 ? -1 : sum / p, sum == 0 ? -1 : r / sum};
    }

    private double crossing() {
        double low = 0, high = 1;
        for (int k = 0; k < BISECTIONS; k++) {
            double middle = 0.5 * (low + high);
            if (value(middle) < 0) low = middle;
            else high = middle;
        }
        return high;
    }
}
