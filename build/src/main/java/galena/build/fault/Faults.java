package galena.build.fault;

import galena.build.fault.Fault.Kind;
import galena.build.folder.Build;
import galena.build.folder.Overlay;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.folder.Supply;
import galena.build.quantity.Engineering;
import galena.build.quantity.Quantity;
import galena.build.source.BadInputException;
import galena.build.wiring.CircuitOf;
import galena.engine.circuit.Circuit;
import galena.engine.part.Battery;
import galena.engine.part.Part;
import galena.engine.part.Preset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;

/** A build's plausible faults, one at a time. Listing is cheap: no circuit is changed before it is asked for. */
public final class Faults {
    private static final double DECADE = 10;

    /** From this size a capacitor to ground is there to hold a net still, F. */
    private static final double DECOUPLES = 10e-9;

    /** State of charge of a battery called flat. */
    private static final double FLAT = 0.02;

    /** Of its voltage, a supply that is given by one only. */
    private static final double SAGGED = 0.7;

    private final Build build;
    private final Circuit typical;
    private final List<Fault> faults = new ArrayList<>();

    private Faults(Build build, Circuit typical) {
        this.build = build;
        this.typical = typical;
    }

    /**
     * @param build as read
     * @param overlay laid over it; its settings are those that the faulty builds have too
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     */
    public static List<Fault> of(Build build, Overlay overlay) throws BadInputException {
        return of(build, CircuitOf.build(build, overlay).circuit());
    }

    /** The same of a circuit that was made from the build. */
    public static List<Fault> of(Build build, Circuit typical) {
        Faults all = new Faults(build, typical);
        build.parts().values().forEach(all::breaks);
        all.bridges();
        build.parts().values().forEach(all::decades);
        all.faults.addAll(CoilFaults.of(build, typical));
        all.faults.addAll(DeviceFaults.of(build, typical));
        all.faults.addAll(Swaps.of(build, typical));
        all.supply();
        return List.copyOf(all.faults);
    }

    private void breaks(PartEntry entry) {
        String name = entry.name();
        Part part = DeviceFaults.part(typical, name);
        if (part instanceof Preset) {
            add(Kind.OPEN, name, name + " wiper open", c -> Breaks.wiperOpen(c, (Preset) DeviceFaults.part(c, name)));
            return;
        }
        if (Breaks.open(part).isEmpty()) return;
        boolean holds = isDecoupling(entry);
        add(holds ? Kind.MISSING : Kind.OPEN, name, name + (holds ? " open or missing" : " open"), circuit -> {
            Part broken = Breaks.open(DeviceFaults.part(circuit, name)).orElseThrow();
            return circuit.with(broken);
        });
    }

    private static boolean isDecoupling(PartEntry entry) {
        return entry.kind() == PartKind.CAPACITOR
                && entry.pins().containsValue(Circuit.GROUND)
                && entry.value().map(Quantity::value).orElse(0.0) >= DECOUPLES;
    }

    private void decades(PartEntry entry) {
        if (entry.value().isEmpty() || !hasDecade(entry)) return;
        String name = entry.name();
        Quantity value = entry.value().get();
        decade(Kind.TEN_TIMES, name, DECADE, Engineering.print(DECADE * value.value(), value.unit(), 2));
        decade(Kind.A_TENTH, name, 1 / DECADE, Engineering.print(value.value() / DECADE, value.unit(), 2));
    }

    /** Coils that are wound by hand are off by turns, not by a decade. */
    private static boolean hasDecade(PartEntry entry) {
        return switch (entry.kind()) {
            case RESISTOR, CAPACITOR, PRESET -> true;
            case COIL -> !entry.values().has("turns");
            default -> false;
        };
    }

    private void decade(Kind kind, String name, double factor, String fitted) {
        add(
                kind,
                name,
                name + " of the wrong decade, " + fitted,
                circuit -> circuit.with(
                        Breaks.scaled(DeviceFaults.part(circuit, name), factor).orElseThrow()));
    }

    /** One bridge for each two nets between which a part stands or two pins of a device lie side by side. */
    private void bridges() {
        Map<Set<String>, Set<String>> across = new LinkedHashMap<>();
        build.supply().ifPresent(s -> across.computeIfAbsent(pair(s.plus(), s.minus()), k -> new LinkedHashSet<>())
                .add(Supply.NAME));
        for (PartEntry entry : build.parts().values()) {
            if (isSource(entry.kind())) continue;
            List<String> nets = List.copyOf(entry.pins().values());
            for (int i = 0; i < nets.size(); i++)
                for (int j = i + 1; j < nets.size(); j++)
                    if (!nets.get(i).equals(nets.get(j)))
                        across.computeIfAbsent(pair(nets.get(i), nets.get(j)), k -> new LinkedHashSet<>())
                                .add(entry.name());
        }
        across.forEach(this::bridge);
    }

    private static boolean isSource(PartKind kind) {
        return kind == PartKind.VOLTAGE || kind == PartKind.CURRENT || kind.isProgramme();
    }

    private static Set<String> pair(String one, String other) {
        return new TreeSet<>(List.of(one, other));
    }

    private void bridge(Set<String> nets, Set<String> parts) {
        List<String> ends = List.copyOf(nets);
        String words = "bridge from " + ends.get(0) + " to " + ends.get(1) + " (at " + either(List.copyOf(parts)) + ")";
        faults.add(new Fault(
                Kind.SHORTED, List.copyOf(parts), words, circuit -> Breaks.bridged(circuit, ends.get(0), ends.get(1))));
    }

    private static String either(List<String> names) {
        if (names.size() == 1) return names.get(0);
        return String.join(", ", names.subList(0, names.size() - 1)) + " or " + names.get(names.size() - 1);
    }

    private void supply() {
        if (build.supply().isEmpty()) return;
        Supply supply = build.supply().get();
        add(Kind.FLAT, Supply.NAME, "battery flat or supply low", circuit -> {
            Battery b = (Battery) DeviceFaults.part(circuit, Supply.NAME);
            return circuit.with(flat(supply, b));
        });
    }

    private static Battery flat(Supply supply, Battery b) {
        if (!(supply instanceof Supply.OfBattery named))
            return new Battery(b.name(), b.plus(), b.minus(), SAGGED * b.emf(), b.internalResistance());
        galena.trade.battery.Battery battery = CircuitOf.battery(named);
        return new Battery(b.name(), b.plus(), b.minus(), battery.emf(FLAT), battery.resistance(FLAT));
    }

    private void add(Kind kind, String part, String words, UnaryOperator<Circuit> change) {
        faults.add(new Fault(kind, List.of(part), words, change));
    }
}
