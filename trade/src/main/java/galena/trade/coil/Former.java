package galena.trade.coil;

import java.util.List;

/** What there is to wind on, with the wire: everything about a coil but its turns. */
public interface Former {
    /**
     * The coil with so many turns on it.
     *
     * @throws galena.trade.wire.OutOfRange when they do not fit or the form's range is left
     */
    Winding wind(double turns);

    /** Most turns that fit, and that the form covers. */
    double mostTurns();

    /** What is not exactly known, each as the former with that input at its low and at its high end. */
    List<Variation> variations();

    /**
     * @param input the uncertain input, in words
     * @param low the former with it at its low end
     * @param high the former with it at its high end
     */
    record Variation(String input, Former low, Former high) {}
}
