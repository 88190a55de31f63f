package galena.trade.battery;

import java.util.List;

/** What a battery's name comes to. */
public sealed interface BatteryLookup {
    /** It is held. */
    record Known(Battery battery) implements BatteryLookup {}

    /**
     * It isn't.
     *
     * @param asked the name as given
     * @param reason what was not understood
     * @param held names of cells that are held, the likeliest first
     */
    record Unknown(String asked, String reason, List<String> held) implements BatteryLookup {
        public Unknown {
            held = List.copyOf(held);
        }

        public String message() {
            return "\"" + asked + "\": " + reason + ". Held: " + String.join(", ", held)
                    + "; several in series as 6xAA-NiMH.";
        }
    }
}
