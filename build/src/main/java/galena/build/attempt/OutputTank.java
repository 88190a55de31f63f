package galena.build.attempt;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.predict.Running;
import galena.engine.equations.Equations;
import galena.engine.part.Coil;
import galena.engine.startup.Linearised;
import galena.engine.startup.Mode;
import galena.engine.startup.Startup;
import java.util.Optional;
import java.util.Set;

/** The tuned circuit of the aerial's coil, where it is not the oscillator's own. */
public final class OutputTank {
    private OutputTank() {}

    /** Its resonance about the operating point. */
    public static Optional<Mode> mode(Running running) {
        Optional<PartEntry> aerial =
                Aim.aerial(running.build()).filter(p -> p.kind().isCoil());
        if (aerial.isEmpty()
                || running.startup().site().part().equals(aerial.get().name())) return Optional.empty();
        Equations equations = running.point().equations();
        Linearised linearised = Linearised.at(equations, running.point().x());
        return linearised.modes().stream()
                .filter(m -> m.growth() < 0 && m.frequency() > 0)
                .filter(m ->
                        Startup.mostStored(equations, m).equals(aerial.get().name()))
                .findFirst();
    }

    /** Parts of a kind that lie across the aerial's coil. */
    public static Optional<PartEntry> across(Build build, PartKind kind, String but) {
        Optional<PartEntry> aerial = Aim.aerial(build).filter(p -> p.kind().isCoil());
        if (aerial.isEmpty()) return Optional.empty();
        Set<String> ends = Set.copyOf(aerial.get().pins().values());
        return build.parts().values().stream()
                .filter(p -> p.kind() == kind && !p.name().equals(but))
                .filter(p -> Set.copyOf(p.pins().values()).equals(ends))
                .findFirst();
    }

    /** By how much the capacitance across the coil must grow for the tank to stand on a frequency, F. */
    public static double missing(Running running, Mode mode, double frequency) {
        String name = Aim.aerial(running.build()).orElseThrow().name();
        double l = ((Coil) running.circuit().part(name).orElseThrow()).inductance();
        return 1 / (l * Math.pow(2 * Math.PI * frequency, 2)) - 1 / (l * Math.pow(mode.angular(), 2));
    }
}
