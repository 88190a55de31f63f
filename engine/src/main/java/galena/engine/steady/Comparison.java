package galena.engine.steady;

import galena.engine.equations.Equations;

/** Compares the figures of two orbits of one circuit. */
final class Comparison {
    /** Harmonics compared: above the tenth a medium-wave carrier has left the band of every receiver it could disturb nearby. */
    static final int HARMONICS = 10;

    /** An unknown whose fundamental is this far below the largest of its kind carries no signal anybody reads, in dB. */
    private static final double QUIET = 60;

    /**
     * The difference is printed with this factor: where a kink falls between mesh points both orbits may err to one side. Against
     * the oracle the bare difference was once a tenth too small.
     */
    private static final double ROOM = 1.5;

    private Comparison() {}

    /**
     * @param drive share of the sources' alternating parts that was heard; zero for a free-running circuit, whose frequency may
     *     also be wrong by the missing power over the circulating power: what a swallowed ringing takes shifts the phase
     */
    static AchievedError of(Equations equations, Orbit coarse, Orbit fine, Accuracy accuracy, double drive) {
        Waveforms waveforms = new Waveforms(equations, fine, drive);
        Waveforms.Powers powers = waveforms.powers();
        double imbalance = powers.imbalance();
        double frequency = ROOM * Math.abs(fine.frequency - coarse.frequency) / fine.frequency;
        double circulating = waveforms.circulatingPower();
        if (drive == 0 && circulating > 0) {
            frequency = Math.max(frequency, imbalance * powers.delivered() / circulating);
        }
        double[][] a = levels(equations, coarse), b = levels(equations, fine);
        double worst = 0;
        String where = "none above the floor";
        for (int j = 1; j < equations.stride(); j++) {
            if (quiet(equations, b, j)) continue;
            double floor = b[j][0] * Math.pow(10, -accuracy.floor() / 20);
            for (int h = 0; h < HARMONICS; h++) {
                if (b[j][h] < floor) continue;
                double change = ROOM * Math.abs(20 * Math.log10(a[j][h] / b[j][h]));
                if (change > worst) {
                    worst = change;
                    where = equations.name(j) + ", harmonic " + (h + 1);
                }
            }
        }
        return new AchievedError(frequency, worst, where, imbalance);
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
        return new Waveforms(equations, orbit, 0).levels(HARMONICS);
    }
}
