package galena.bench.capture;

import java.io.IOException;

/** A capture that cannot be read: where, why, and what to do about it. Bad input, never a fault of ours. */
public final class UnreadableCapture extends IOException {
    private static final int LONGEST = 160;

    private final String place;
    private final String cause;
    private final String remedy;

    /**
     * @param place file, and line where there is one
     * @param cause what was found
     * @param remedy the nearest thing that works
     */
    public UnreadableCapture(String place, String cause, String remedy) {
        super(place + ": " + line(cause) + ". " + line(remedy) + ".");
        this.place = place;
        this.cause = line(cause);
        this.remedy = line(remedy);
    }

    /** What a file holds may be quoted, but not its line ends nor all of it. */
    private static String line(String text) {
        String clean = text.replaceAll("[\\p{Cntrl}\\u2028\\u2029]", " ");
        return clean.length() > LONGEST ? clean.substring(0, LONGEST) + "…" : clean;
    }

    public String place() {
        return place;
    }

    public String cause() {
        return cause;
    }

    public String remedy() {
        return remedy;
    }
}
