package galena.trade.preferred;

/** A marking that can't be read: what was read, why not, what would be right. */
public final class MarkingException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    MarkingException(String read, String cause, String remedy) {
        super("\"" + read + "\" " + cause + ". " + remedy);
    }
}
