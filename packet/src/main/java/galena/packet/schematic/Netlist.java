package galena.packet.schematic;

import galena.build.folder.Build;
import galena.build.folder.Coupled;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.folder.Supply;
import galena.build.folder.TestPoint;
import galena.build.wiring.Channels;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A build as its drawing needs it.
 *
 * @param elements symbols to be placed
 * @param nets names; ground first, the rail second (empty if there is none)
 * @param loose couplings too weak to be drawn as windings on one core, or of coils that already share one
 */
record Netlist(List<Element> elements, List<String> nets, List<Coupled> loose) {
    static final int GROUND = 0;
    static final int RAIL = 1;
    private static final String GROUND_NAME = "ground";
    /** Above this a coupling is a transformer, below it two coils that see one another. */
    private static final double ONE_CORE = 0.1;

    Netlist {
        elements = List.copyOf(elements);
        nets = List.copyOf(nets);
        loose = List.copyOf(loose);
    }

    static Netlist of(Build build) {
        return new Reader(build).read();
    }

    private static final class Reader {
        private final Build build;
        private final List<String> nets = new ArrayList<>(List.of(GROUND_NAME));
        private final List<Element> elements = new ArrayList<>();
        private final List<Coupled> loose = new ArrayList<>();
        private final Set<String> done = new LinkedHashSet<>();

        Reader(Build build) {
            this.build = build;
        }

        Netlist read() {
            nets.add(rail());
            build.supply().ifPresent(this::supply);
            for (Coupled coupled : build.couplings()) couple(coupled);
            for (PartEntry part : build.parts().values()) if (!done.contains(part.name())) add(part);
            for (TestPoint point : build.points().values())
                elements.add(Element.of(Glyph.TEST_POINT, point.name(), "", List.of("at"), List.of(net(point.at()))));
            return new Netlist(elements, nets, loose);
        }

        /** The net that the supply holds against ground; in a stage of its own, what a direct source holds. */
        private String rail() {
            Optional<String> supplied = build.supply().map(s -> s.plus().equals(GROUND_NAME) ? s.minus() : s.plus());
            return supplied.or(() -> build.parts().values().stream()
                            .filter(p ->
                                    p.kind() == PartKind.VOLTAGE && !p.values().has("frequency"))
                            .filter(p -> p.pin("minus").equals(GROUND_NAME))
                            .map(p -> p.pin("plus"))
                            .findFirst())
                    .filter(net -> !net.equals(GROUND_NAME))
                    .orElse("");
        }

        private int net(String name) {
            if (!nets.contains(name)) nets.add(name);
            return nets.indexOf(name);
        }

        private void supply(Supply supply) {
            String value = supply instanceof Supply.OfBattery battery
                    ? battery.type()
                    : ((Supply.OfVoltage) supply).voltage().text();
            elements.add(Element.of(
                    supply instanceof Supply.OfBattery ? Glyph.BATTERY : Glyph.DIRECT_VOLTAGE,
                    Supply.NAME,
                    value,
                    List.of("plus", "minus"),
                    List.of(net(supply.plus()), net(supply.minus()))));
        }

        private void couple(Coupled coupled) {
            boolean taken = done.contains(coupled.first()) || done.contains(coupled.second());
            if (taken || Math.abs(coupled.k().value()) < ONE_CORE) {
                loose.add(coupled);
                return;
            }
            PartEntry first = build.part(coupled.first()).orElseThrow();
            PartEntry second = build.part(coupled.second()).orElseThrow();
            boolean rod = first.kind() == PartKind.LOOPSTICK || second.kind() == PartKind.LOOPSTICK;
            elements.add(new Element(
                    rod ? Glyph.COUPLED_ON_CORE : Glyph.COUPLED,
                    List.of(first.name(), second.name()),
                    List.of(value(first), value(second)),
                    List.of("from", "to", "from", "to"),
                    List.of(
                            net(first.pin("from")),
                            net(first.pin("to")),
                            net(second.pin("from")),
                            net(second.pin("to"))),
                    List.of(0, coupled.k().value() > 0 ? 2 : 3)));
            done.add(first.name());
            done.add(second.name());
        }

        private void add(PartEntry part) {
            Map<String, Integer> pins = new LinkedHashMap<>();
            part.pins().forEach((pin, net) -> pins.put(pin, net(net)));
            elements.add(Element.of(
                    glyph(part), part.name(), value(part), List.copyOf(pins.keySet()), List.copyOf(pins.values())));
        }

        private String value(PartEntry part) {
            if (!part.kind().isProgramme() || part.value().isPresent()) return part.label();
            return build.intent()
                    .programme()
                    .map(p -> part.label() + " " + p.level().text())
                    .orElse(part.label());
        }

        private Glyph glyph(PartEntry part) {
            return switch (part.kind()) {
                case RESISTOR -> Glyph.RESISTOR;
                case PRESET -> Glyph.PRESET;
                case CAPACITOR -> Glyph.CAPACITOR;
                case TRIMMER -> Glyph.TRIMMER;
                case COIL -> part.isAdjustable() ? Glyph.SLUG_COIL : Glyph.COIL;
                case LOOPSTICK -> Glyph.LOOPSTICK;
                case LOOP -> Glyph.COIL;
                case WIRE -> Glyph.AERIAL;
                case CRYSTAL, RESONATOR -> Glyph.CRYSTAL;
                case DIODE -> Glyph.DIODE;
                case TUNING_DIODE -> Glyph.TUNING_DIODE;
                case NPN -> Glyph.NPN;
                case PNP -> Glyph.PNP;
                case JFET -> Channels.isP(build, part) ? Glyph.P_JFET : Glyph.N_JFET;
                case MOSFET -> mosfet(part);
                case DUAL_GATE_MOSFET -> Glyph.DUAL_GATE_MOSFET;
                case VOLTAGE -> part.values().has("frequency") ? Glyph.ALTERNATING_VOLTAGE : Glyph.DIRECT_VOLTAGE;
                case CURRENT -> Glyph.CURRENT;
                case AUDIO -> Glyph.ALTERNATING_VOLTAGE;
                case OPAMP -> Glyph.OPAMP;
                case STEREO -> Glyph.STEREO;
                case LOAD -> Glyph.LOAD;
            };
        }

        private Glyph mosfet(PartEntry part) {
            double threshold = part.parameters().map(p -> p.si("threshold")).orElse(0.0);
            boolean p = Channels.isP(build, part);
            if (threshold < 0) return p ? Glyph.P_DEPLETION_MOSFET : Glyph.N_DEPLETION_MOSFET;
            return p ? Glyph.P_MOSFET : Glyph.N_MOSFET;
        }
    }
}
