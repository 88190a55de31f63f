package galena.build.pattern;

import galena.build.folder.Build;
import galena.build.folder.Overlay;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.folder.Supply;
import galena.build.source.BadInputException;
import galena.build.wiring.CircuitOf;
import galena.build.wiring.Specimens;
import galena.engine.circuit.Circuit;
import galena.engine.part.Part;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.trade.battery.Battery;
import java.util.Optional;

/** Circuits of a build at the ends of what it may meet: heat, battery, devices. */
public final class Corners {
    private Corners() {}

    /** Specimens of all devices at once. */
    public enum Devices {
        TYPICAL,
        WEAK,
        STRONG
    }

    /** @param charge of the battery, 1 full to 0 spent; a supply of fixed voltage stays as it is */
    public static Overlay overlay(Build build, double celsius, double charge) {
        Overlay overlay = Overlay.NONE.atTemperature(celsius);
        if (!(build.supply().orElse(null) instanceof Supply.OfBattery named)) return overlay;
        Battery battery = CircuitOf.battery(named);
        return overlay.withSupply(new Overlay.SupplyState(battery.emf(charge), battery.resistance(charge)));
    }

    /** The circuit with its audio at rest. */
    public static Circuit circuit(Build build, Overlay overlay, Devices devices) throws BadInputException {
        Circuit circuit = CircuitOf.build(build, overlay).circuit();
        for (PartEntry entry : build.parts().values()) {
            Optional<Part> part = circuit.part(entry.name());
            if (part.isEmpty()) continue;
            if (entry.kind() == PartKind.AUDIO) {
                VoltageSource audio = (VoltageSource) part.get();
                Wave rest = new Wave.Direct(audio.wave().rest());
                circuit = circuit.with(new VoltageSource(audio.name(), audio.plus(), audio.minus(), rest));
            }
            Optional<Specimens.Pair> pair = Specimens.of(build, entry, part.get());
            if (pair.isPresent() && devices == Devices.WEAK)
                circuit = circuit.with(pair.get().weak());
            if (pair.isPresent() && devices == Devices.STRONG)
                circuit = circuit.with(pair.get().strong());
        }
        return circuit;
    }
}
