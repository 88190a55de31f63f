package galena.build.fault;

import galena.build.fault.Fault.Kind;
import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.engine.circuit.Circuit;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Jfet;
import galena.engine.part.Part;
import galena.engine.part.Preset;
import galena.engine.part.Resistor;
import galena.engine.part.Trimmer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Parts of a kind that were put in one another's places: trimmers, presets, coils and devices wherever they stand, since a
 * build has few; resistors and capacitors where they are neighbours on a net.
 */
final class Swaps {
    /** Values nearer than this may change places unnoticed. */
    private static final double ALIKE = 1.5;

    private Swaps() {}

    static List<Fault> of(Build build, Circuit typical) {
        List<Fault> faults = new ArrayList<>();
        List<PartEntry> entries = List.copyOf(build.parts().values());
        for (int i = 0; i < entries.size(); i++) {
            for (int j = i + 1; j < entries.size(); j++) {
                PartEntry a = entries.get(i), b = entries.get(j);
                if (a.kind() != b.kind() || !mayBeTaken(a, b)) continue;
                Part one = DeviceFaults.part(typical, a.name()), other = DeviceFaults.part(typical, b.name());
                if (in(one, other).isPresent() && differ(a, b)) faults.add(swap(a.name(), b.name()));
            }
        }
        return faults;
    }

    private static Fault swap(String a, String b) {
        return new Fault(Kind.SWAPPED, List.of(a, b), a + " and " + b + " exchanged", circuit -> {
            Part one = DeviceFaults.part(circuit, a), other = DeviceFaults.part(circuit, b);
            return circuit.with(in(one, other).orElseThrow())
                    .with(in(other, one).orElseThrow());
        });
    }

    private static boolean mayBeTaken(PartEntry a, PartEntry b) {
        if (a.kind() != PartKind.RESISTOR && a.kind() != PartKind.CAPACITOR) return true;
        return a.pins().values().stream()
                .anyMatch(net -> !net.equals(Circuit.GROUND) && b.pins().containsValue(net));
    }

    private static boolean differ(PartEntry a, PartEntry b) {
        if (a.value().isEmpty() || b.value().isEmpty()) return !a.label().equals(b.label());
        double ratio = a.value().get().value() / b.value().get().value();
        return ratio > ALIKE || ratio < 1 / ALIKE;
    }

    /** At the place of one part, what the other is; empty for kinds that are not exchanged. */
    private static Optional<Part> in(Part place, Part fitted) {
        String name = place.name(),
                from = place.nets().isEmpty() ? "" : place.nets().get(0);
        String to = place.nets().isEmpty() ? "" : place.nets().get(place.nets().size() - 1);
        if (fitted instanceof Resistor r)
            return Optional.of(new Resistor(name, from, to, r.resistance(), r.temperatureCoefficient()));
        if (fitted instanceof Capacitor c)
            return Optional.of(new Capacitor(name, from, to, c.capacitance(), c.temperatureCoefficient()));
        if (fitted instanceof Trimmer t)
            return Optional.of(new Trimmer(
                    name,
                    from,
                    to,
                    t.minimum(),
                    t.maximum(),
                    ((Trimmer) place).position(),
                    t.temperatureCoefficient()));
        if (fitted instanceof Preset p)
            return Optional.of(new Preset(
                    name,
                    from,
                    place.nets().get(1),
                    to,
                    p.resistance(),
                    ((Preset) place).position(),
                    p.endResistance()));
        if (fitted instanceof Coil c)
            return Optional.of(new Coil(
                    name,
                    from,
                    to,
                    c.inductance(),
                    c.seriesResistance(),
                    c.selfCapacitance(),
                    c.temperatureCoefficient()));
        if (fitted instanceof Bipolar b && place instanceof Bipolar at)
            return Optional.of(new Bipolar(name, b.polarity(), at.collector(), at.base(), at.emitter(), b.model()));
        if (fitted instanceof Jfet q && place instanceof Jfet at)
            return Optional.of(new Jfet(name, q.polarity(), at.drain(), at.gate(), at.source(), q.model()));
        return Optional.empty();
    }
}
