package galena.trade.device;

import java.util.List;

/** What the library says to a type number. */
public sealed interface Lookup {
    /** It is held. */
    record Known(Device device) implements Lookup {}

    /**
     * It isn't held.
     *
     * @param asked what was asked for
     * @param nearest type numbers spelt most like it, best first; may be empty
     */
    record Unknown(String asked, List<String> nearest) implements Lookup {
        public Unknown {
            nearest = List.copyOf(nearest);
        }

        /** One sentence with the remedy. */
        public String message() {
            return "no device \"" + asked + "\" is held."
                    + (nearest.isEmpty() ? "" : " Nearest: " + String.join(", ", nearest) + ".")
                    + " A device of your own needs only the few numbers its data sheet prints.";
        }
    }
}
