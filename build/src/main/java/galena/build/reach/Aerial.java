package galena.build.reach;

import galena.build.figure.Figure;
import galena.trade.field.MagneticDipole;
import galena.trade.field.Radiator;
import galena.trade.field.ShortWire;
import java.util.List;

/** A part that radiates, by its sizes. */
public sealed interface Aerial {
    /** The part's name. */
    String part();

    /** What it is, in a few words: "rod coil of 38 turns". */
    String words();

    /** Nearer than this (m) its field isn't reckoned. */
    double nearest();

    /** From here on (m) its field is right to 2 %; between, to 15 %. */
    double good();

    /** What a builder should know of how this was found. */
    List<String> notes();

    /** The source of field that a current (A, rms) at a frequency (Hz) makes of it. */
    Radiator carrying(double current, double frequency);

    /** Up to here (Hz) its current and field are reckoned. */
    default double highest() {
        return Double.POSITIVE_INFINITY;
    }

    /** Natural logarithm of the least and greatest moment over the typical one. */
    double[] spread();

    /**
     * A loop or a coil on a rod.
     *
     * @param momentPerAmpere turns times area, times what the rod adds (m²)
     * @param size greatest extent (m)
     * @param wireLength wire on it, without leads (m)
     */
    record Wound(
            String part, String words, Figure.Known momentPerAmpere, double size, double wireLength, List<String> notes)
            implements Aerial {
        public Wound {
            notes = List.copyOf(notes);
        }

        /** Three sizes off a dipole is right to 15 %, twelve off to 2 %. */
        @Override
        public double nearest() {
            return 3 * size;
        }

        @Override
        public double good() {
            return 12 * size;
        }

        @Override
        public MagneticDipole carrying(double current, double frequency) {
            return new MagneticDipole(momentPerAmpere.value() * current, frequency);
        }

        @Override
        public double[] spread() {
            return new double[] {
                Math.log(momentPerAmpere.low() / momentPerAmpere.value()),
                Math.log(momentPerAmpere.high() / momentPerAmpere.value())
            };
        }
    }

    /**
     * A wire that stands upright.
     *
     * @param wire its size
     */
    record Upright(String part, String words, ShortWire wire, List<String> notes) implements Aerial {
        public Upright {
            notes = List.copyOf(notes);
        }

        /** Its current is summed along it, so beside it too. */
        @Override
        public double nearest() {
            return BESIDE;
        }

        @Override
        public double good() {
            return BESIDE;
        }

        @Override
        public Radiator carrying(double current, double frequency) {
            return wire.carrying(current, frequency);
        }

        @Override
        public double highest() {
            return wire.highestFrequency();
        }

        /** Its length is measured; walls and a ground that is none are not in it. */
        @Override
        public double[] spread() {
            return new double[] {Math.log(1 - SIZES_KNOWN_TO), Math.log(1 + SIZES_KNOWN_TO)};
        }
    }

    /** As near to a wire as a set is put (m). */
    double BESIDE = 0.5;

    /** Share to which sizes of aerials are taken as measured; common practice with a tape. */
    double SIZES_KNOWN_TO = 0.03;
}
