package galena.trade.channel;

/**
 * One reason against a channel.
 *
 * @param kind what sort
 * @param points weight; more is worse
 * @param tone audible difference frequency (Hz), 0 where none is heard
 * @param day whether it counts by day
 * @param night whether it counts by night
 * @param words the reason with its numbers
 */
public record Nuisance(Kind kind, double points, double tone, boolean day, boolean night, String words) {
    /** Sorts of nuisance. */
    public enum Kind {
        /** A station on the channel itself: beats and flutter. */
        SAME_CHANNEL,
        /** A station so near that the carriers make a whistle or the sidebands splash. */
        BESIDE,
        /** A harmonic of a strong local station falls near. */
        HARMONIC_OF_LOCAL,
        /** A station on the image frequency of the receiver. */
        IMAGE,
        /** This channel is the image of a station heard. */
        IMAGE_ON_STATION,
        /** A harmonic of the receiver's own intermediate frequency falls near. */
        RECEIVER_TWEET,
        /** A harmonic of this channel falls on a station heard. */
        OWN_HARMONIC_ON_STATION,
        /** A harmonic of this channel falls into another service. */
        OWN_HARMONIC_IN_SERVICE,
        /** A harmonic of this channel falls into a restricted band of the region. */
        OWN_HARMONIC_RESTRICTED,
        /** Sets that step by the raster can't stop here. */
        OFF_RASTER
    }
}
