package galena.engine.circuit;

import galena.engine.part.Battery;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.CurrentSource;
import galena.engine.part.Diode;
import galena.engine.part.DualGateMosfet;
import galena.engine.part.Jfet;
import galena.engine.part.Load;
import galena.engine.part.Mosfet;
import galena.engine.part.OpAmp;
import galena.engine.part.Part;
import galena.engine.part.Preset;
import galena.engine.part.Resistor;
import galena.engine.part.Resonator;
import galena.engine.part.Trimmer;
import galena.engine.part.VoltageSource;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * The check of a circuit's graph before any solve. The structural conditions are those under which nodal equations have one
 * solution and index at most two: L. O. Chua, C. A. Desoer and E. S. Kuh, Linear and Nonlinear Circuits, McGraw-Hill 1987,
 * ch. 13; D. Estévez Schwarz and C. Tischendorf, Int. J. Circuit Theory Appl. 28 (2000) 131, theorem 4.
 */
public final class Structure {
    private final Circuit circuit;
    private final List<Fault> faults = new ArrayList<>();

    private Structure(Circuit circuit) {
        this.circuit = circuit;
    }

    /** Everything that is wrong or unusual, fatal faults first; empty when nothing is. */
    public static List<Fault> faults(Circuit circuit) {
        Structure structure = new Structure(circuit);
        structure.findLonePins();
        structure.findGround();
        structure.findLoops(Structure::isShort, Fault.Kind.SOURCE_LOOP, edge -> true);
        structure.findUnreached();
        structure.findLoops(
                edge -> isIdealSource(edge.part) || isCapacitance(edge.part),
                Fault.Kind.CAPACITOR_ACROSS_SOURCE,
                edge -> isCapacitance(edge.part));
        structure.findSeriesCoils();
        structure.faults.sort(
                (a, b) -> Boolean.compare(b.kind().fatal(), a.kind().fatal()));
        return List.copyOf(structure.faults);
    }

    /** A two-ended connection that a part makes. */
    private record Edge(Part part, String from, String to) {}

    private void findLonePins() {
        Map<String, Set<String>> users = new LinkedHashMap<>();
        Map<String, Integer> pins = new LinkedHashMap<>();
        for (Part part : circuit.parts()) {
            for (String net : part.nets()) {
                users.computeIfAbsent(net, n -> new LinkedHashSet<>()).add(part.name());
                pins.merge(net, 1, Integer::sum);
            }
        }
        users.forEach((net, parts) -> {
            if (pins.getOrDefault(net, 0) == 1 && !net.equals(Circuit.GROUND)) {
                faults.add(new Fault(Fault.Kind.LONE_PIN, List.copyOf(parts), List.of(net)));
            }
        });
    }

    private void findGround() {
        boolean grounded = circuit.parts().stream().anyMatch(part -> part.nets().contains(Circuit.GROUND));
        if (!grounded) faults.add(new Fault(Fault.Kind.NO_GROUND, List.of(), List.of()));
    }

    /** Grows a forest from the edges that pass; an edge within one tree closes a loop, which is named. */
    private void findLoops(Predicate<Edge> passes, Fault.Kind kind, Predicate<Edge> closing) {
        Map<String, List<Edge>> tree = new LinkedHashMap<>();
        List<Edge> edges = new ArrayList<>();
        for (Part part : circuit.parts()) for (Edge edge : edges(part)) if (passes.test(edge)) edges.add(edge);
        // sources first, so that the loop closes on the part that is out of place; capacitors alone may form loops
        edges.sort((a, b) -> Boolean.compare(isIdealSource(b.part), isIdealSource(a.part)));
        for (Edge edge : edges) {
            List<Edge> path = path(tree, edge.from, edge.to, new LinkedHashSet<>());
            if (path == null) {
                tree.computeIfAbsent(edge.from, n -> new ArrayList<>()).add(edge);
                tree.computeIfAbsent(edge.to, n -> new ArrayList<>()).add(edge);
            } else if (closing.test(edge) && hasSourceOrCoil(path, edge)) {
                Set<String> names = new LinkedHashSet<>();
                names.add(edge.part.name());
                for (Edge member : path) names.add(member.part.name());
                faults.add(new Fault(kind, List.copyOf(names), List.of()));
            }
        }
    }

    private static boolean hasSourceOrCoil(List<Edge> path, Edge edge) {
        return !isCapacitance(edge.part) || path.stream().anyMatch(member -> isIdealSource(member.part));
    }

    private static @Nullable List<Edge> path(Map<String, List<Edge>> tree, String from, String to, Set<String> seen) {
        if (from.equals(to)) return new ArrayList<>();
        seen.add(from);
        for (Edge edge : tree.getOrDefault(from, List.of())) {
            String next = edge.from.equals(from) ? edge.to : edge.from;
            if (seen.contains(next)) continue;
            List<Edge> rest = path(tree, next, to, seen);
            if (rest != null) {
                rest.add(edge);
                return rest;
            }
        }
        return null;
    }

    /** Nets that direct current cannot reach from ground, one fault for each island. */
    private void findUnreached() {
        Set<String> reached = reach(Circuit.GROUND, Structure::conductsDirect);
        Set<String> left = new LinkedHashSet<>(circuit.nets());
        left.removeAll(reached);
        while (!left.isEmpty()) {
            Set<String> island = reach(left.iterator().next(), Structure::conductsDirect);
            left.removeAll(island);
            boolean fed = partsAt(island).stream()
                    .map(name -> circuit.part(name).orElseThrow())
                    .anyMatch(CurrentSource.class::isInstance);
            Fault.Kind kind = fed ? Fault.Kind.CURRENT_SOURCE_CUT : Fault.Kind.NO_DIRECT_PATH;
            faults.add(new Fault(kind, partsAt(island), List.copyOf(island)));
        }
    }

    private Set<String> reach(String start, Predicate<Edge> passes) {
        Set<String> reached = new LinkedHashSet<>(Set.of(start));
        boolean grown = true;
        while (grown) {
            grown = false;
            for (Part part : circuit.parts()) {
                for (Edge edge : edges(part)) {
                    if (passes.test(edge) && (reached.contains(edge.from) != reached.contains(edge.to))) {
                        reached.add(edge.from);
                        reached.add(edge.to);
                        grown = true;
                    }
                }
            }
        }
        return reached;
    }

    private List<String> partsAt(Set<String> nets) {
        List<String> names = new ArrayList<>();
        for (Part part : circuit.parts()) if (part.nets().stream().anyMatch(nets::contains)) names.add(part.name());
        return names;
    }

    private void findSeriesCoils() {
        for (String net : circuit.nets()) {
            List<String> coils = new ArrayList<>();
            boolean others = false;
            for (Part part : circuit.parts()) {
                if (!part.nets().contains(net)) continue;
                boolean bare = part instanceof Coil coil && coil.selfCapacitance() == 0;
                if (bare || part instanceof CurrentSource) coils.add(part.name());
                else others = true;
            }
            if (!others && coils.size() > 1) {
                faults.add(new Fault(Fault.Kind.COILS_IN_SERIES, coils, List.of(net)));
            }
        }
    }

    /** The pairs of pins between which a part carries current of its own; inner nets are left out. */
    private static List<Edge> edges(Part part) {
        List<String> n = part.nets();
        if (part instanceof Coupling) return List.of();
        if (part instanceof Preset)
            return List.of(new Edge(part, n.get(0), n.get(1)), new Edge(part, n.get(1), n.get(2)));
        if (part instanceof Bipolar)
            return List.of(new Edge(part, n.get(0), n.get(2)), new Edge(part, n.get(1), n.get(2)));
        if (part instanceof Jfet || part instanceof Mosfet) return List.of(new Edge(part, n.get(0), n.get(2)));
        if (part instanceof DualGateMosfet) return List.of(new Edge(part, n.get(0), n.get(3)));
        if (part instanceof OpAmp)
            return List.of(new Edge(part, n.get(2), n.get(4)), new Edge(part, n.get(3), n.get(4)));
        return List.of(new Edge(part, n.get(0), n.get(1)));
    }

    /** Gates are left out: what sets a net only through a gate's leakage is not set. */
    private static boolean conductsDirect(Edge edge) {
        Part part = edge.part;
        return part instanceof Resistor
                || part instanceof Preset
                || part instanceof Coil
                || part instanceof Load
                || part instanceof Battery
                || part instanceof VoltageSource
                || part instanceof Diode
                || part instanceof Bipolar
                || part instanceof Jfet
                || part instanceof Mosfet
                || part instanceof DualGateMosfet
                || part instanceof OpAmp;
    }

    private static boolean isIdealSource(Part part) {
        return part instanceof VoltageSource || (part instanceof Battery battery && battery.internalResistance() == 0);
    }

    private static boolean isShort(Edge edge) {
        return isIdealSource(edge.part) || (edge.part instanceof Coil coil && coil.seriesResistance() == 0);
    }

    private static boolean isCapacitance(Part part) {
        return part instanceof Capacitor || part instanceof Trimmer || part instanceof Resonator;
    }
}
