package galena.trade.limit;

import galena.trade.field.Radiator;
import java.util.List;

/**
 * What a build sends: the carrier and its harmonics, each as the dipole it makes.
 *
 * @param aerial kind of aerial
 * @param carrier dipole at the carrier; its moment is the unmodulated carrier's, rms
 * @param harmonics dipoles at the harmonics, rms, in any order; may be empty
 * @param positivePeak positive modulation peak, Emax/Ec − 1
 * @param facts what else the build tells
 */
public record Transmission(
        Aerial aerial, Radiator carrier, List<Radiator> harmonics, double positivePeak, BuildFacts facts) {
    /** Kinds of aerial that rules tell apart. */
    public enum Aerial {
        /** Loop or ferrite rod. */
        LOOP,
        /** Open wire or rod. */
        WIRE
    }

    public Transmission {
        harmonics = List.copyOf(harmonics);
        if (!(positivePeak >= 0) || Double.isInfinite(positivePeak)) {
            throw new IllegalArgumentException("a positive modulation peak is zero or more, not " + positivePeak);
        }
        for (Radiator each : harmonics) {
            if (each.frequency() <= carrier.frequency()) {
                throw new IllegalArgumentException(each.frequency() + " Hz is no harmonic of " + carrier.frequency());
            }
        }
    }
}
