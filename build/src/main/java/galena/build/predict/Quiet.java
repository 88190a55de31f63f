package galena.build.predict;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.engine.circuit.Circuit;
import galena.engine.part.Coil;
import galena.engine.part.Resonator;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;

/** The circuit with its audio sources at their resting value: the carrier is asked about, unmodulated. */
public final class Quiet {
    private Quiet() {}

    /** A stage without coil or resonator is studied at audio frequency and stays as it is. */
    public static Circuit of(Build build, Circuit circuit) {
        boolean tuned = circuit.parts().stream().anyMatch(p -> p instanceof Coil || p instanceof Resonator);
        if (!tuned) return circuit;
        Circuit quiet = circuit;
        for (PartEntry entry : build.parts().values()) {
            if (!entry.kind().isProgramme()) continue;
            VoltageSource source = (VoltageSource) circuit.part(entry.name()).orElseThrow();
            Wave rest = new Wave.Direct(source.wave().rest());
            quiet = quiet.with(new VoltageSource(source.name(), source.plus(), source.minus(), rest));
        }
        return quiet;
    }
}
