package galena.build.attempt;

/** The lines that a build is held to. Slack is positive where a line is met; what it measures stands beside each. */
public enum Line {
    /** Slack: startup margin, the extra share of loss that it could carry. */
    STARTS("starts by itself", 0.3, true),
    /** Slack: way from the trimmer's nearer stop, twice its share of the travel. */
    ON_CHANNEL("trimmer reaches the channel", 0.16, true),
    /** Slack: tenths of decibels below the harmonic allowed. */
    HARMONICS("harmonics", 0.2, true),
    /** Slack: share of the allowed distortion that is left at the wanted depth. */
    DEPTH("wanted depth, clean", 0.1, true),
    /** Slack: logarithm of the programme's level over the audio that the wanted depth takes with the preset fully up. */
    LEVEL("programme drives it", 0.05, true),
    /** Slack: logarithm of hours over those wanted. */
    RUNTIME("runtime", 0.05, true),
    /** Slack: logarithm of the output over what the distance wants; typical parts. */
    DISTANCE("heard at the distance", 0.06, false),
    /** Slack: logarithm of the output that the region's field limit leaves over the output; typical parts. */
    LIMIT("region's field limit", 0.06, false),
    /** Slack: logarithm of the output tank's width over what the audio band wants; typical parts. */
    BAND("audio passes the output tank", 0.05, false);

    private final String words;
    private final double margin;
    private final boolean ofCopies;

    Line(String words, double margin, boolean ofCopies) {
        this.words = words;
        this.margin = margin;
        this.ofCopies = ofCopies;
    }

    /** Slack that a proposal aims at, so that what can't be reckoned does not break it. */
    public double margin() {
        return margin;
    }

    /** Whether every copy is held to it; else the typical build alone. */
    public boolean ofCopies() {
        return ofCopies;
    }

    @Override
    public String toString() {
        return words;
    }
}
