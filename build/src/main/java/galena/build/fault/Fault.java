package galena.build.fault;

import galena.build.wiring.Assembled;
import galena.engine.circuit.Circuit;
import galena.engine.part.Part;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/**
 * One thing that may be wrong with a build. The change is not made before it is asked for.
 *
 * @param kind what is wrong
 * @param parts names of the build's parts that may be at fault, the supply's included; the effect of each alone is the same
 * @param words "Cf open", "bridge from out to rail (La, Ro, Co or Cq shorted)"
 * @param change from a circuit of the build to that with the fault in it
 */
public record Fault(Kind kind, List<String> parts, String words, UnaryOperator<Circuit> change) {
    /** What can be wrong with a part. */
    public enum Kind {
        /** A lead broken or not soldered. */
        OPEN,
        /** A decoupling capacitor left out or not soldered. */
        MISSING,
        /** Two nets bridged by solder, or a part between them shorted. */
        SHORTED,
        /** Ten times the value. */
        TEN_TIMES,
        /** A tenth of the value. */
        A_TENTH,
        /** A device whose channel is gone or whose base is open. */
        DEAD,
        /** A device with half of what the weakest of its data sheet has. */
        WEAK,
        /** A diode or transistor put in the wrong way round. */
        TURNED_ROUND,
        /** A coupled coil with its ends exchanged. */
        REVERSED,
        /** Two neighbouring turns of a coil touch. */
        SHORTED_TURN,
        /** Two parts of a kind, each in the other's place. */
        SWAPPED,
        /** A battery near its end. */
        FLAT
    }

    public Fault {
        if (parts.isEmpty()) throw new IllegalArgumentException(words + ": a fault names the parts it may lie in");
        parts = List.copyOf(parts);
    }

    /**
     * @param healthy a circuit made from the build that the fault was listed for
     * @throws IllegalArgumentException when the circuit lacks the part
     */
    public Circuit in(Circuit healthy) {
        return change.apply(healthy);
    }

    /** The same with the origin of every part; what the fault put there comes from the first part that may be at fault. */
    public Assembled in(Assembled healthy) {
        Circuit changed = in(healthy.circuit());
        Map<String, String> origins = new LinkedHashMap<>();
        String first = healthy.origins().getOrDefault(parts.get(0), "parts." + parts.get(0));
        for (Part part : changed.parts()) {
            if (healthy.circuit().part(part.name()).isEmpty()) origins.put(part.name(), first);
            else healthy.origin(part.name()).ifPresent(path -> origins.put(part.name(), path));
        }
        return new Assembled(changed, origins, healthy.warnings());
    }

    @Override
    public String toString() {
        return words;
    }
}
