package galena.packet.schematic;

import galena.packet.schematic.Schematic.Pin;
import galena.packet.schematic.Schematic.Symbol;
import galena.packet.schematic.Schematic.Wire;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Follows the lines of a drawing as a reader's finger does: wires join where one ends on another, symbols of ground and of the rail
 * join by their name. What hangs together must be what the pins' nets say.
 */
final class Joints {
    private final List<Wire> wires;
    private final List<Pin> pins = new ArrayList<>();
    private final List<Boolean> byName = new ArrayList<>();
    private final int[] group;

    Joints(Schematic drawing) {
        wires = drawing.wires();
        for (Symbol symbol : drawing.symbols())
            for (Pin pin : symbol.pins()) {
                pins.add(pin);
                byName.add(symbol.parts().isEmpty());
            }
        group = new int[wires.size() + pins.size()];
        Arrays.setAll(group, k -> k);
        join();
    }

    private void join() {
        for (int i = 0; i < wires.size(); i++) {
            Wire w = wires.get(i);
            for (int j = 0; j < wires.size(); j++) {
                Wire o = wires.get(j);
                if (i != j && (touches(w, o.x1(), o.y1()) || touches(w, o.x2(), o.y2()))) unite(i, j);
            }
            for (int p = 0; p < pins.size(); p++)
                if (touches(w, pins.get(p).x(), pins.get(p).y())) unite(i, wires.size() + p);
        }
        Map<String, Integer> named = new LinkedHashMap<>();
        for (int p = 0; p < pins.size(); p++) {
            int at = wires.size() + p;
            for (int q = 0; q < p; q++)
                if (pins.get(p).x() == pins.get(q).x()
                        && pins.get(p).y() == pins.get(q).y()) unite(at, wires.size() + q);
            if (!byName.get(p)) continue;
            Integer before = named.putIfAbsent(pins.get(p).net(), at);
            if (before != null) unite(at, before);
        }
        // A rail that is drawn as a line and as symbols bears its name at both.
        named.forEach((net, at) -> {
            for (int i = 0; i < wires.size(); i++) if (wires.get(i).net().equals(net)) unite(at, i);
        });
    }

    private static boolean touches(Wire w, int x, int y) {
        return w.x1() <= x && x <= w.x2() && w.y1() <= y && y <= w.y2();
    }

    private int find(int k) {
        int at = k;
        while (group[at] != at) at = group[at];
        return at;
    }

    private void unite(int one, int other) {
        group[find(one)] = find(other);
    }

    List<String> faults() {
        List<String> faults = new ArrayList<>();
        Map<String, Set<Integer>> groups = new LinkedHashMap<>();
        Map<Integer, Set<String>> nets = new LinkedHashMap<>();
        for (int p = 0; p < pins.size(); p++) {
            int root = find(wires.size() + p);
            groups.computeIfAbsent(pins.get(p).net(), n -> new LinkedHashSet<>())
                    .add(root);
            nets.computeIfAbsent(root, r -> new LinkedHashSet<>())
                    .add(pins.get(p).net());
        }
        for (int i = 0; i < wires.size(); i++)
            nets.computeIfAbsent(find(i), r -> new LinkedHashSet<>())
                    .add(wires.get(i).net());
        groups.forEach((net, roots) -> {
            if (roots.size() > 1) faults.add("the net " + net + " is drawn in " + roots.size() + " pieces");
        });
        nets.values().stream()
                .filter(together -> together.size() > 1)
                .forEach(together -> faults.add("drawn as one: " + String.join(", ", together)));
        return faults;
    }
}
