package galena.engine.envelope;

/**
 * The difference between an envelope and the same on about half the slow points: what is printed as its error.
 *
 * @param points slow points of the finer one
 * @param amplitude largest difference of any coil's or resonator's carrier current over the slow period, as a share of its
 *     mean amplitude
 * @param where the part with that difference
 * @param frequency largest difference of the oscillation's frequency over the slow period, Hz
 */
public record EnvelopeError(int points, double amplitude, String where, double frequency) {}
