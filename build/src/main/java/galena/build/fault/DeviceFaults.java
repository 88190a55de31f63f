package galena.build.fault;

import galena.build.fault.Fault.Kind;
import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.wiring.Specimens;
import galena.engine.circuit.Circuit;
import galena.engine.part.Bipolar;
import galena.engine.part.Diode;
import galena.engine.part.DualGateMosfet;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Mosfet;
import galena.engine.part.Part;
import galena.engine.part.Polarity;
import galena.engine.part.Resistor;
import java.util.ArrayList;
import java.util.List;

/** What goes wrong with diodes and transistors; bridges between their pins are counted with the other bridges. */
final class DeviceFaults {
    /** Below the weakest that the sheet admits. */
    private static final double WEAK = 0.5;

    private final Build build;
    private final Circuit typical;
    private final List<Fault> faults = new ArrayList<>();

    private DeviceFaults(Build build, Circuit typical) {
        this.build = build;
        this.typical = typical;
    }

    static List<Fault> of(Build build, Circuit typical) {
        DeviceFaults devices = new DeviceFaults(build, typical);
        for (PartEntry entry : build.parts().values()) devices.add(entry);
        return devices.faults;
    }

    private void add(PartEntry entry) {
        String name = entry.name();
        Part part = typical.part(name).orElseThrow();
        if (part instanceof Diode) {
            add(Kind.OPEN, name, name + " open", DeviceFaults::apart);
            add(Kind.TURNED_ROUND, name, name + " the wrong way round", DeviceFaults::turned);
        } else if (part instanceof Bipolar) {
            add(Kind.DEAD, name, name + " dead: its base is open", DeviceFaults::apart);
            add(Kind.TURNED_ROUND, name, name + " turned round: collector and emitter exchanged", DeviceFaults::turned);
            weak(entry, "current gain");
        } else if (part instanceof Jfet) {
            add(Kind.DEAD, name, name + " dead: no channel", DeviceFaults::junctionsOnly);
            add(Kind.OPEN, name, name + " gate open", DeviceFaults::gateOpen);
            weak(entry, "drain current");
        } else if (part instanceof Mosfet || part instanceof DualGateMosfet) {
            add(Kind.DEAD, name, name + " dead: no channel", DeviceFaults::apart);
            weak(entry, "drain current");
        }
    }

    private interface Change {
        Circuit of(Circuit circuit, Part part);
    }

    private void add(Kind kind, String name, String words, Change change) {
        faults.add(new Fault(kind, List.of(name), words, circuit -> change.of(circuit, part(circuit, name))));
    }

    private void weak(PartEntry entry, String what) {
        String name = entry.name();
        String words = name + " weak: half the " + what + " of the weakest its data admit";
        add(
                Kind.WEAK,
                name,
                words,
                (circuit, part) -> circuit.with(weaker(Specimens.of(build, entry, part)
                        .map(Specimens.Pair::weak)
                        .orElse(part))));
    }

    static Part part(Circuit circuit, String name) {
        return circuit.part(name).orElseThrow(() -> new IllegalArgumentException("no part is named " + name));
    }

    /** The device gone: its pins only leak to one another, the first pair under the device's own name. */
    private static Circuit apart(Circuit circuit, Part part) {
        List<String> nets = part.nets();
        Circuit changed =
                circuit.with(new Resistor(part.name(), nets.get(0), nets.get(nets.size() - 1), Breaks.LEAKAGE));
        for (int k = 1; k < nets.size() - 1; k++)
            changed = changed.plus(
                    new Resistor(part.name() + ".leak" + k, nets.get(k), nets.get(nets.size() - 1), Breaks.LEAKAGE));
        return changed;
    }

    private static Circuit turned(Circuit circuit, Part part) {
        if (part instanceof Diode d)
            return circuit.with(new Diode(d.name(), /* anode= */ d.cathode(), /* cathode= */ d.anode(), d.junction()));
        Bipolar b = (Bipolar) part;
        return circuit.with(new Bipolar(
                b.name(),
                b.polarity(),
                /* collector= */ b.emitter(),
                b.base(),
                /* emitter= */ b.collector(),
                b.model()));
    }

    private static Circuit junctionsOnly(Circuit circuit, Part part) {
        Jfet q = (Jfet) part;
        return circuit.with(new Resistor(q.name(), q.drain(), q.source(), Breaks.LEAKAGE))
                .plus(gate(q, q.source(), ".source", q.model().gateSource()))
                .plus(gate(q, q.drain(), ".drain", q.model().gateDrain()));
    }

    private static Diode gate(Jfet q, String channel, String suffix, Junction junction) {
        return q.polarity() == Polarity.N
                ? new Diode(q.name() + suffix, q.gate(), channel, junction)
                : new Diode(q.name() + suffix, channel, q.gate(), junction);
    }

    private static Circuit gateOpen(Circuit circuit, Part part) {
        Jfet q = (Jfet) part;
        String loose = q.name() + ".gate";
        return circuit.with(new Jfet(q.name(), q.polarity(), q.drain(), loose, q.source(), q.model()))
                .plus(new Resistor(loose + ".break", loose, q.gate(), Breaks.LEAKAGE));
    }

    private static Part weaker(Part part) {
        if (part instanceof Jfet q) {
            Jfet.Model m = q.model();
            Jfet.Model half = new Jfet.Model(
                    WEAK * m.saturationCurrent(),
                    m.pinchOff(),
                    m.channelLengthModulation(),
                    m.gateSource(),
                    m.gateDrain());
            return new Jfet(q.name(), q.polarity(), q.drain(), q.gate(), q.source(), half);
        }
        if (part instanceof Bipolar q)
            return new Bipolar(q.name(), q.polarity(), q.collector(), q.base(), q.emitter(), weaker(q.model()));
        if (part instanceof Mosfet q)
            return new Mosfet(q.name(), q.polarity(), q.drain(), q.gate(), q.source(), weaker(q.model()));
        DualGateMosfet q = (DualGateMosfet) part;
        return new DualGateMosfet(
                q.name(),
                q.polarity(),
                q.drain(),
                q.gate2(),
                q.gate1(),
                q.source(),
                weaker(q.lower()),
                weaker(q.upper()));
    }

    private static Bipolar.Model weaker(Bipolar.Model m) {
        return m.withForwardBeta(WEAK * m.forwardBeta());
    }

    private static Mosfet.Model weaker(Mosfet.Model m) {
        return new Mosfet.Model(
                m.threshold(),
                WEAK * m.beta(),
                m.channelLengthModulation(),
                m.gateSourceCapacitance(),
                m.gateDrainCapacitance(),
                m.drainSourceCapacitance(),
                m.leakage(),
                m.body());
    }
}
