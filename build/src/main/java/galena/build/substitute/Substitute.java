package galena.build.substitute;

import galena.build.attempt.Aim;
import galena.build.attempt.Depth;
import galena.build.attempt.Looking;
import galena.build.attempt.Stock;
import galena.build.attempt.Tried;
import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.predict.Progress;
import galena.build.predict.Running.NotRunning;
import galena.build.reach.Surroundings;
import galena.build.source.BadInputException;
import galena.build.source.Nearest;
import galena.build.source.Problem;
import galena.build.spread.Conditions;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What can stand in the place of one part of a build, by prediction. */
public final class Substitute {
    static final int COPIES = 24;

    private static final Set<PartKind> DEVICES =
            Set.of(PartKind.JFET, PartKind.NPN, PartKind.PNP, PartKind.DIODE, PartKind.DUAL_GATE_MOSFET);
    private static final Set<PartKind> VALUES = Set.of(PartKind.RESISTOR, PartKind.CAPACITOR, PartKind.COIL);

    private Substitute() {}

    /**
     * @param part its name
     * @param drawerOnly whether only what the drawer holds is asked for
     * @param seed of the copies
     * @throws BadInputException when there is no such part, or nothing can be said of its kind
     * @throws NotRunning when the build does not oscillate as it is
     */
    public static SubstituteReport of(BuildFolder folder, String part, boolean drawerOnly, long seed, Progress progress)
            throws BadInputException, NotRunning {
        Build build = folder.build();
        PartEntry entry = build.part(part).orElseThrow(() -> unknown(build, part));
        if ((!DEVICES.contains(entry.kind()) && !VALUES.contains(entry.kind())) || valueless(entry))
            throw refused(
                    entry,
                    "no substitute is reckoned for " + entry.kind().noun()
                            + (entry.value().isEmpty() && VALUES.contains(entry.kind()) ? " with a range" : ""),
                    "Transistors, diodes, resistors, capacitors and coils of one value have substitutes.");
        Aim aim = new Aim(build.intent(), Surroundings.RESIDENTIAL, "rod-set");
        Looking looking = new Looking(aim, Conditions.FULL, seed, progress);
        progress.at(0.02, "the build as it is");
        Tried here = looking.look(Depth.up(build))
                .map(t -> looking.draw(t, COPIES))
                .orElseThrow(
                        () -> new NotRunning(
                                "the build does not oscillate as it is, so nothing can be held against it; galena predict says why"));
        Stock stock = new Stock(folder.drawer());
        if (VALUES.contains(entry.kind()))
            return new ValueSubstitutes(here, entry, folder.drawer(), looking, progress).report();
        return new DeviceSubstitutes(here, entry, stock, looking, drawerOnly, progress).report();
    }

    private static boolean valueless(PartEntry entry) {
        return VALUES.contains(entry.kind()) && entry.value().isEmpty();
    }

    private static BadInputException unknown(Build build, String part) {
        return new BadInputException(new Problem(
                build.top().place(),
                "parts",
                "no part is named \"" + part + '"',
                "Parts: " + String.join(", ", build.parts().keySet()) + ".",
                Nearest.to(part, build.parts().keySet()).map(n -> "Nearest: " + n)));
    }

    static BadInputException refused(PartEntry entry, String found, String rule) {
        return new BadInputException(new Problem(entry.place(), entry.path(), found, rule, Optional.empty()));
    }

    /** What the build misses with the part that stands there, for a note; a substitute is held to no more than that. */
    static List<String> missed(Tried here) {
        if (here.standing().failing().isEmpty()) return List.of();
        String lines = here.standing().failing().entrySet().stream()
                .map(e -> e.getKey()
                        + (e.getKey().ofCopies() ? " (" + Math.round(100 * e.getValue()) + " of 100 copies)" : ""))
                .collect(Collectors.joining(", "));
        return List.of("The build as it is misses " + lines + "; a substitute is held to no more.");
    }
}
