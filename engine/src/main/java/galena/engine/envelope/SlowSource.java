package galena.engine.envelope;

/**
 * A voltage or current source that departs slowly from its rest: by level · sin(2π · frequency · t).
 *
 * @param name of the source in the circuit
 * @param level peak departure, V or A, not below zero
 * @param frequency Hz, above zero and far below the carrier's
 */
public record SlowSource(String name, double level, double frequency) {
    public SlowSource {
        if (!(level >= 0) || !Double.isFinite(level)) {
            throw new IllegalArgumentException(name + ": a level is not below zero, got " + level);
        }
        if (!(frequency > 0) || !Double.isFinite(frequency)) {
            throw new IllegalArgumentException(name + ": a frequency is above zero, got " + frequency + " Hz");
        }
    }

    /** The same source with another level. */
    public SlowSource withLevel(double other) {
        return new SlowSource(name, other, frequency);
    }

    /** Departure at a time, s. */
    double at(double time) {
        return level * Math.sin(2 * Math.PI * frequency * time);
    }

    /** Its rate of change, 1/s. */
    double rate(double time) {
        double angular = 2 * Math.PI * frequency;
        return level * angular * Math.cos(angular * time);
    }
}
