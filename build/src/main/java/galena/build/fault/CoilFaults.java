package galena.build.fault;

import galena.build.fault.Fault.Kind;
import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.engine.circuit.Circuit;
import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.Part;
import java.util.ArrayList;
import java.util.List;

/** Windings the wrong way round, and turns that touch. */
final class CoilFaults {
    /** Below this two coils only see one another, and nobody notices which way round. */
    private static final double ONE_CORE = 0.02;

    /** Turns of a coil that doesn't say: the usual at medium waves (common practice). */
    private static final double USUAL_TURNS = 50;

    /** A middle turn with the whole of a single layer in air, and on a rod (common practice). */
    private static final double TURN_IN_AIR = 0.5;

    private static final double TURN_ON_ROD = 0.7;

    /** A turn of bare copper, Ω: so that no ring is without loss. */
    private static final double SMALLEST_RESISTANCE = 1e-4;

    private CoilFaults() {}

    static List<Fault> of(Build build, Circuit typical) {
        List<Fault> faults = new ArrayList<>();
        for (PartEntry entry : build.parts().values()) {
            if (!entry.kind().isCoil()) continue;
            String name = entry.name();
            if (isCoupled(typical, name))
                faults.add(new Fault(
                        Kind.REVERSED,
                        List.of(name),
                        name + " reversed: its ends exchanged",
                        circuit -> circuit.with(reversed(coil(circuit, name)))));
            double turns = entry.values().si("turns", USUAL_TURNS);
            double k = entry.kind() == PartKind.LOOPSTICK ? TURN_ON_ROD : TURN_IN_AIR;
            faults.add(new Fault(
                    Kind.SHORTED_TURN,
                    List.of(name),
                    name + " with a shorted turn",
                    circuit -> shortedTurn(circuit, coil(circuit, name), turns, k)));
        }
        return faults;
    }

    private static Coil coil(Circuit circuit, String name) {
        return (Coil) DeviceFaults.part(circuit, name);
    }

    private static boolean isCoupled(Circuit circuit, String name) {
        return circuit.parts().stream()
                .anyMatch(part -> part instanceof Coupling k && joins(k, name) && Math.abs(k.k()) >= ONE_CORE);
    }

    private static boolean joins(Coupling coupling, String name) {
        return coupling.first().equals(name) || coupling.second().equals(name);
    }

    private static Coil reversed(Coil c) {
        return new Coil(
                c.name(),
                c.to(),
                c.from(),
                c.inductance(),
                c.seriesResistance(),
                c.selfCapacitance(),
                c.temperatureCoefficient());
    }

    /**
     * A ring of one turn, coupled by k to its coil and by k times as much to what the coil is coupled to. A turn's share of the
     * coil's flux linkage is L/N, which is k √(L L₁): its own inductance is L/(k N)². Its resistance is R/N.
     */
    private static Circuit shortedTurn(Circuit circuit, Coil coil, double turns, double k) {
        String name = coil.name() + ".turn";
        Coil ring = new Coil(
                name,
                Circuit.GROUND,
                Circuit.GROUND,
                coil.inductance() / (k * k * turns * turns),
                Math.max(coil.seriesResistance() / turns, SMALLEST_RESISTANCE),
                0,
                0);
        List<Part> added = new ArrayList<>(
                List.of(ring, new Coupling("k(" + coil.name() + "," + name + ")", coil.name(), name, k)));
        for (Part part : circuit.parts()) {
            if (!(part instanceof Coupling other) || !joins(other, coil.name())) continue;
            String far = other.first().equals(coil.name()) ? other.second() : other.first();
            added.add(new Coupling("k(" + far + "," + name + ")", far, name, k * other.k()));
        }
        return circuit.plus(added.toArray(Part[]::new));
    }
}
