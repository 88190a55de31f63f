package galena.trade.channel;

/**
 * A crystal or resonator in the box.
 *
 * @param name as the builder calls it
 * @param frequency as marked (Hz)
 * @param kind of part
 * @param pullDown how far it can be pulled below its mark, as a ratio
 * @param pullUp how far above
 */
public record BoxPart(String name, double frequency, Kind kind, double pullDown, double pullUp) {
    /**
     * Kinds and the pull that any of the kind will take. Builders report spans of 0.08 to 0.1 % for crystals and 1.5 to
     * 5.2 % for ceramic resonators by size and circuit; half of the least span either way is promised here.
     */
    public enum Kind {
        CRYSTAL(0.0004),
        CERAMIC(0.0075);

        private final double pull;

        Kind(double pull) {
            this.pull = pull;
        }

        /** Ratio either way. */
        public double pull() {
            return pull;
        }
    }

    public BoxPart {
        if (!(frequency > 0) || Double.isInfinite(frequency)) {
            throw new IllegalArgumentException(name + ": a frequency is positive, not " + frequency);
        }
        if (!(pullDown >= 0 && pullDown < 1 && pullUp >= 0 && pullUp < 1)) {
            throw new IllegalArgumentException(name + ": pull is a ratio from 0 to 1");
        }
    }

    /** A part that takes the pull of its kind. */
    public static BoxPart of(String name, double frequency, Kind kind) {
        return new BoxPart(name, frequency, kind, kind.pull(), kind.pull());
    }

    /** Room (Hz) upwards for a positive {@code change}, downwards for a negative one. */
    double room(double change) {
        return frequency * (change >= 0 ? pullUp : pullDown);
    }
}
