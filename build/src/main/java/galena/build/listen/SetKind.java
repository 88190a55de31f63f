package galena.build.listen;

import galena.signal.receiver.ReceiverSettings;
import galena.trade.noise.ReceiverClass;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Kinds of set to listen with: the trade's classes with what their detectors are usually made of. Circuits, detector loads and gain
 * control are common practice for each kind; a set at hand differs.
 */
public enum SetKind {
    /** Three tuned circuits; 10 nF behind the diode on some 5 kΩ of volume control. */
    ROD("rod_set", 3, 47e-6, 0.85, 0.2),
    /** Two double-tuned transformers; 100 pF on half a megohm, the next grid leak beside it. */
    TABLE("wire_fed_table_set", 4, 50e-6, 0.75, 0.15),
    /** One tuned circuit; earphones are the whole load; no gain and no control. */
    CRYSTAL("crystal_set", 1, 30e-6, 1, Double.POSITIVE_INFINITY);

    private final String word;
    private final int circuits;
    private final double detector;
    private final double audioShare;
    private final double gainControl;

    SetKind(String word, int circuits, double detector, double audioShare, double gainControl) {
        this.word = word;
        this.circuits = circuits;
        this.detector = detector;
        this.audioShare = audioShare;
        this.gainControl = gainControl;
    }

    /** "rod" */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The word of each. */
    public static List<String> all() {
        return Arrays.stream(values()).map(SetKind::word).toList();
    }

    public static Optional<SetKind> named(String word) {
        return Arrays.stream(values()).filter(k -> k.word().equals(word)).findFirst();
    }

    /** The trade's class. */
    public ReceiverClass receiver() {
        return ReceiverClass.named(word);
    }

    /** "transistor set with ferrite rod" */
    public String words() {
        return receiver().name();
    }

    /** What it is made of, tuned beside the carrier by so many Hz. */
    public ReceiverSettings settings(double mistuned) {
        return new ReceiverSettings(circuits, receiver().bandwidth(), mistuned, detector, audioShare, gainControl);
    }
}
