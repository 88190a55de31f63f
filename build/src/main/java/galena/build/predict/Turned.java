package galena.build.predict;

import galena.build.folder.Build;
import galena.build.quantity.Range;
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
        if (part instanceof Coil coil) return circuit.with(slug(build, coil, position));
        throw new IllegalArgumentException(name + " has no position to set");
    }

    /** A slug moves the inductance through its range; the Q stays. */
    private static Coil slug(Build build, Coil coil, double position) {
        Range range = build.part(coil.name()).orElseThrow().range().orElseThrow();
        double now = range.at(build.part(coil.name()).orElseThrow().position().orElseThrow());
        double scale = range.at(position) / now;
        return coil.scaled(scale, scale);
    }
}
