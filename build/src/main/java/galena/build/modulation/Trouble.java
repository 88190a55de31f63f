package galena.build.modulation;

/** What a modulated carrier suffers from. */
public enum Trouble {
    /** The in-phase envelope goes below zero. */
    OVERMODULATED("overmodulated: the trough passes zero"),
    /** The crest stays near its top for longer than a tone's would. */
    CREST_CLIPS("the crest is clipped"),
    /** The trough stays near its bottom for longer than a tone's would. */
    TROUGH_CLIPS("the trough is clipped"),
    /** The oscillation stops for a part of every audio period. */
    QUITS("the oscillation quits in the trough");

    private final String words;

    Trouble(String words) {
        this.words = words;
    }

    @Override
    public String toString() {
        return words;
    }
}
