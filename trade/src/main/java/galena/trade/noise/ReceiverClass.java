package galena.trade.noise;

import galena.trade.source.DataTable;
import galena.trade.source.Provenance;
import java.util.List;

/**
 * A class of receiver. Orders of magnitude by their basis: a set at hand may differ by 10 dB either way.
 *
 * @param word its name in data
 * @param name in words
 * @param pickup field it takes up
 * @param ownNoise own noise as a field in its bandwidth (V/m, rms)
 * @param leastField carrier below which it doesn't play (V/m, rms)
 * @param bandwidth before detection (Hz)
 * @param provenance where from
 */
public record ReceiverClass(
        String word,
        String name,
        Pickup pickup,
        double ownNoise,
        double leastField,
        double bandwidth,
        Provenance provenance) {
    /** Which field a receiver takes up. */
    public enum Pickup {
        /** A rod or loop. */
        MAGNETIC,
        /** A wire. */
        ELECTRIC
    }

    private static final class Standard {
        static final List<ReceiverClass> CLASSES =
                DataTable.resource(ReceiverClass.class, "receivers.csv").rows().stream()
                        .map(row -> new ReceiverClass(
                                row.text("class"),
                                row.text("name"),
                                row.text("pickup").equals("magnetic") ? Pickup.MAGNETIC : Pickup.ELECTRIC,
                                row.required("own_noise_uv_m") * 1e-6,
                                row.required("least_field_uv_m") * 1e-6,
                                row.required("bandwidth_hz"),
                                row.provenance()))
                        .toList();
    }

    /** The classes held: rod set, wire-fed table set, crystal set. */
    public static List<ReceiverClass> standard() {
        return Standard.CLASSES;
    }

    /** One of the classes held, by its word. */
    public static ReceiverClass named(String word) {
        for (ReceiverClass each : standard()) if (each.word.equals(word)) return each;
        throw new IllegalArgumentException("no receiver class \"" + word + "\"; held: "
                + String.join(", ", standard().stream().map(ReceiverClass::word).toList()));
    }
}
