package galena.desk.server;

/** A body is longer than its kind may be; nothing of it was kept. */
public final class TooLarge extends Exception {
    private static final long serialVersionUID = 1;

    private final long most;

    TooLarge(long most) {
        super("more than " + most + " bytes");
        this.most = most;
    }

    /** What would have been taken, bytes. */
    public long most() {
        return most;
    }
}
