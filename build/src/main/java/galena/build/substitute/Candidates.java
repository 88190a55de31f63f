package galena.build.substitute;

import galena.build.attempt.Draft;
import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.source.BadInputException;
import galena.trade.device.Device;
import galena.trade.device.Lookup;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Which devices may be put in another's place, and the build with one of them there. */
final class Candidates {
    private Candidates() {}

    /** Types of the same family in the build's library, without the part's own; none for a part that names no type. */
    static List<String> types(Build build, PartEntry part) {
        Optional<Lookup> own = part.type().map(build.devices()::find);
        if (own.isEmpty() || !(own.get() instanceof Lookup.Known known)) return List.of();
        return build.devices().devices().stream()
                .filter(d -> d.family() == known.device().family())
                .map(Device::type)
                .filter(other -> !other.equals(known.device().type()))
                .toList();
    }

    /** Path of what names a part's device or value. */
    static String key(PartEntry part) {
        return part.path() + "." + part.kind().key();
    }

    /** Empty where the build can't be read so: a sheet lacks what a prediction needs, or a value lies beyond what its kind allows. */
    static Optional<Build> with(Build build, Map<String, String> changes) {
        try {
            return Optional.of(Draft.with(build, changes));
        } catch (BadInputException unfit) {
            return Optional.empty();
        }
    }
}
