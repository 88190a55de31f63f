package galena.engine.envelope;

/** One cycle of the carrier: the charges it starts from, its frequency, and all unknowns at its stages. Changed in place. */
final class Cycle {
    /** Time of its start, s. */
    final double time;
    /** Charges at its start, one for each charged row. */
    final double[] start;
    /** Unknowns: stage j of interval k from {@link Layout#at} on; ground's zero first. */
    final double[] x;
    /** Hz: one over the time it takes. */
    double frequency;

    Cycle(double time, double[] start, double[] x, double frequency) {
        this.time = time;
        this.start = start;
        this.x = x;
        this.frequency = frequency;
    }

    Cycle copy() {
        return new Cycle(time, start.clone(), x.clone(), frequency);
    }
}
