package galena.engine.envelope;

import galena.engine.timerun.Passage;
import galena.engine.timerun.TimeRun;
import java.util.LinkedHashMap;
import java.util.Map;

/** Sums what passes into one complex amplitude for each carrier cycle of a slow period. */
final class CycleWindows implements TimeRun.Listener {
    /** Half the width of the window in which neighbouring cycles are averaged, cycles. */
    private static final int REACH = 2;

    private final Map<String, Integer> watched;
    private final double frequency;
    private final double from;
    private final double length;
    private final int cycles;
    private final Map<String, double[][]> sums = new LinkedHashMap<>();
    private double[] last = {};

    /**
     * @param watched unknowns by name
     * @param frequency from which they are seen, Hz
     * @param from start of the slow period, s
     * @param period its length, s
     */
    CycleWindows(Map<String, Integer> watched, double frequency, double from, double period) {
        this.watched = watched;
        this.from = from;
        this.frequency = frequency;
        cycles = (int) Math.rint(frequency * period);
        length = period / cycles;
        for (String name : watched.keySet()) sums.put(name, new double[2][cycles]);
    }

    @Override
    public boolean step(Passage passage) {
        double start = Math.max(passage.start(), from), span = passage.end() - passage.start();
        while (start < passage.end() - 1e-9 * span) {
            int cycle = (int) Math.min(cycles - 1, Math.max(0, Math.floor((start - from) / length + 1e-9)));
            double end = cycle == cycles - 1 ? passage.end() : Math.min(passage.end(), from + (cycle + 1) * length);
            add(passage, cycle, (start - passage.start()) / span, (end - passage.start()) / span);
            start = end;
        }
        last = passage.x().clone();
        return true;
    }

    private void add(Passage passage, int cycle, double first, double second) {
        double seconds = (second - first) * (passage.end() - passage.start());
        for (int g = 0; g < Cubic.NODES; g++) {
            double share = first + Cubic.SHARES[g] * (second - first);
            double angle = 2 * Math.PI * frequency * passage.time(share);
            double weight = 2 * Cubic.WEIGHTS[g] * seconds / length, c = Math.cos(angle), s = Math.sin(angle);
            for (Map.Entry<String, Integer> entry : watched.entrySet()) {
                double value = weight * passage.at(entry.getValue(), 0, share);
                double[][] sum = sums.getOrDefault(entry.getKey(), new double[2][cycles]);
                sum[0][cycle] += value * c;
                sum[1][cycle] -= value * s;
            }
        }
    }

    /** All unknowns at the end of the last step. */
    double[] last() {
        return last;
    }

    /** Each envelope at equally spaced points of the slow period: neighbouring cycles averaged by a raised cosine. */
    Map<String, double[][]> envelopes(int points) {
        Map<String, double[][]> all = new LinkedHashMap<>();
        sums.forEach((name, sum) -> {
            double[][] z = new double[2][points];
            for (int i = 0; i < points; i++) {
                double centre = i * (double) cycles / points - 0.5;
                int low = (int) Math.ceil(centre - REACH), high = (int) Math.floor(centre + REACH);
                double total = 0;
                for (int k = low; k <= high; k++) {
                    double weight = 1 + Math.cos(Math.PI * (k - centre) / REACH);
                    int cycle = Math.floorMod(k, cycles);
                    z[0][i] += weight * sum[0][cycle];
                    z[1][i] += weight * sum[1][cycle];
                    total += weight;
                }
                z[0][i] /= total;
                z[1][i] /= total;
            }
            all.put(name, z);
        });
        return all;
    }
}
