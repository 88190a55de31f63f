package galena.build.readings;

import galena.build.folder.LogEntry.What;

/** One reading asked for. What modulation does is not among them: see {@link #canBeHad}. */
public record Asked(What what, Situation situation) {
    /** Whether this model answers it: the carrier unmodulated, levels and mean values; at a point where one is needed. */
    public boolean canBeHad() {
        return switch (what) {
            case CARRIER, CURRENT -> true;
            case VOLTAGE, AMPLITUDE, SECOND_HARMONIC, THIRD_HARMONIC ->
                situation.point().isPresent();
            case POSITIVE_PEAK, NEGATIVE_PEAK, DISTORTION, SWING -> false;
        };
    }

    /** Whether its errors are shares of it: the model then gives its natural logarithm. */
    public boolean byRatio() {
        return switch (what) {
            case CARRIER, CURRENT, AMPLITUDE -> true;
            default -> false;
        };
    }
}
