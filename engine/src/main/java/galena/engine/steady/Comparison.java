package galena.engine.steady;

import galena.engine.equations.Equations;

/** Compares the figures of two orbits of one circuit. */
final class Comparison {
    /** Harmonics compared: above the tenth a medium-wave carrier has left the band of every receiver it could disturb nearby. */
    static final int HARMONICS = 10;

    /** An unknown whose fundamental is this far below the largest of its kind carries no signal anybody reads, in dB. */
    private static final double QUIET = 60;

    private Comparison() {}

    static AchievedError of(Equations equations, Orbit coarse, Orbit fine, Accuracy accuracy) {
        double frequency = Math.abs(fine.frequency - coarse.frequency) / fine.frequency;
        double[][] a = levels(equations, coarse), b = levels(equations, fine);
        double worst = 0;
        String where = "none above the floor";
        for (int j = 1; j < equations.stride(); j++) {
            if (quiet(equations, b, j)) continue;
            double floor = b[j][0] * Math.pow(10, -accuracy.floor() / 20);
            for (int h = 0; h < HARMONICS; h++) {
                if (b[j][h] < floor) continue;
                double change = Math.abs(20 * Math.log10(a[j][h] / b[j][h]));
                if (change > worst) {
                    worst = change;
                    where = equations.name(j) + ", harmonic " + (h + 1);
                }
            }
        }
        return new AchievedError(frequency, worst, where);
    }

    private static boolean quiet(Equations equations, double[][] levels, int unknown) {
        double largest = 0;
        for (int j = 1; j < levels.length; j++) {
            if (equations.isCurrent(j) == equations.isCurrent(unknown)) largest = Math.max(largest, levels[j][0]);
        }
        return levels[unknown][0] <= largest * Math.pow(10, -QUIET / 20);
    }

    /** Amplitudes by unknown and harmonic, the fundamental first. */
    static double[][] levels(Equations equations, Orbit orbit) {
        Waveforms waveforms = new Waveforms(equations, orbit);
        double[][] levels = new double[equations.stride()][HARMONICS];
        for (int j = 1; j < levels.length; j++) {
            for (int h = 0; h < HARMONICS; h++) levels[j][h] = waveforms.amplitude(j, 0, h + 1);
        }
        return levels;
    }
}
