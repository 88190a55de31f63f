package galena.build.wiring;

import galena.engine.part.Part;
import java.util.List;

/**
 * Something of a build that is not known before it is measured: one value, or one device with two numbers to it. What it may be
 * is told by numbers from the unit cube, all places of which are alike likely.
 *
 * @param what with what is known of it: "Lt inductance ±5 %"
 * @param part the engine's part
 * @param kind of that part: of another that took its name nothing is known here
 * @param keys what each of its numbers stands for, by which a calibration calls them: "Lt inductance"
 * @param bend the law of its values
 * @param draw gives the part from those numbers and from the part as drawn so far
 */
public record Unknown(String what, String part, Class<? extends Part> kind, List<String> keys, Bend bend, Draw draw) {
    /** Makes a part from numbers in [0, 1). */
    public interface Draw {
        Part from(Part sofar, double[] u, int at);
    }

    public Unknown {
        keys = List.copyOf(keys);
    }

    /** Numbers of the unit cube that it takes. */
    public int numbers() {
        return keys.size();
    }

    /** Whether the part is one that this is unknown of. */
    public boolean isOf(Part other) {
        return other.name().equals(part) && kind.isInstance(other);
    }

    /** −limit to +limit, evenly. */
    static double even(double u, double limit) {
        return 1 + limit * (2 * u - 1);
    }
}
