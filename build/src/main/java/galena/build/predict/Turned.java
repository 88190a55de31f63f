package galena.build.predict;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.wiring.Travel;
import galena.engine.circuit.Circuit;
import galena.engine.part.Coil;
import galena.engine.part.Part;
import galena.engine.part.Preset;
import galena.engine.part.Trimmer;

/** A circuit with one adjustment at another position. */
final class Turned {
    private Turned() {}

    static Circuit to(Build build, Circuit circuit, String name, double position) {
        Part part = circuit.part(name).orElseThrow();
        if (part instanceof Trimmer trimmer) return circuit.with(trimmer.at(position));
        if (part instanceof Preset preset) return circuit.with(preset.at(position));
        if (part instanceof Coil coil) return circuit.with(moved(build, coil, position));
        throw new IllegalArgumentException(name + " has no position to set");
    }

    /** A slug or a slide changes the inductance; the Q stays. */
    private static Coil moved(Build build, Coil coil, double position) {
        PartEntry entry = build.part(coil.name()).orElseThrow();
        double now = Travel.inductance(entry, entry.position().orElseThrow());
        double scale = Travel.inductance(entry, position) / now;
        return coil.scaled(scale, scale);
    }
}
