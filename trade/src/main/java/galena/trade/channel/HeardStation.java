package galena.trade.channel;

/**
 * A station that the builder hears.
 *
 * @param name as the builder calls it
 * @param frequency (Hz)
 * @param day whether it is heard by day
 * @param night whether it is heard by night
 * @param strength how strong
 */
public record HeardStation(String name, double frequency, boolean day, boolean night, Strength strength) {
    /** How strong a station is, in words a listener has. */
    public enum Strength {
        /** Just to be made out. */
        FAINT(1),
        /** Followed with ease, noise behind it. */
        FAIR(3),
        /** Clean. */
        STRONG(6),
        /** So strong that it is found on its harmonics and images: a transmitter nearby. */
        LOCAL(10);

        private final int points;

        Strength(int points) {
            this.points = points;
        }

        /** Weight in a ranking. */
        int points() {
            return points;
        }
    }

    public HeardStation {
        if (!(frequency > 0) || Double.isInfinite(frequency)) {
            throw new IllegalArgumentException(name + ": a frequency is positive, not " + frequency);
        }
        if (!day && !night) {
            throw new IllegalArgumentException(name + ": a station heard neither by day nor by night isn't heard");
        }
    }
}
