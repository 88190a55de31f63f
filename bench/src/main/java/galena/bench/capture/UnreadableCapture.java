package galena.bench.capture;

import java.io.IOException;

/** A capture that cannot be read: where, why, and what to do about it. Bad input, never a fault of ours. */
public final class UnreadableCapture extends IOException {
    private final String place;
    private final String cause;
    private final String remedy;

    /**
     * @param place file, and line where there is one
     * @param cause what was found
     * @param remedy the nearest thing that works
     */
    public UnreadableCapture(String place, String cause, String remedy) {
        super(place + ": " + cause + ". " + remedy + ".");
        this.place = place;
        this.cause = cause;
        this.remedy = remedy;
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
