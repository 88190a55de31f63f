package galena.build.substitute;

import galena.build.spread.Drawn;
import java.util.List;
import java.util.Optional;

/**
 * Another device in place of one that the build names.
 *
 * @param parts all parts of the build of that type, which change together
 * @param fitted type in the build
 * @param type in its place
 * @param typical how the build does with typical specimens; empty when they could not be judged
 * @param failures of the intent, by typical, weakest or strongest specimens, beyond those the build has anyway
 */
public record DeviceChoice(
        List<String> parts, String fitted, String type, Optional<Drawn> typical, List<String> failures) {
    public DeviceChoice {
        parts = List.copyOf(parts);
        failures = List.copyOf(failures);
    }

    /** Whether every specimen that its sheet admits keeps the intent. */
    public boolean fits() {
        return typical.isPresent() && failures.isEmpty();
    }
}
