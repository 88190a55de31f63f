package galena.build.listen;

/** A build that cannot be listened to; the message says why. */
public final class NothingToHear extends Exception {
    private static final long serialVersionUID = 1;

    NothingToHear(String why) {
        super(why);
    }
}
