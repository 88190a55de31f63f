package galena.packet.schematic;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * What a person sees in a circuit before drawing it: how high each net stands between rail and ground, and which stage drives
 * which.
 */
final class Course {
    /** Series parts that a signal may pass between two stages. */
    private static final int MOST_BETWEEN = 2;

    private static final int SWEEPS = 400;

    private final Netlist netlist;

    Course(Netlist netlist) {
        this.netlist = netlist;
    }

    /** Standing of each net: 1 at the rail, 0 at ground, between them as if every path for direct current were a resistor. */
    double[] heights() {
        double[] height = new double[netlist.nets().size()];
        Arrays.fill(height, 0.5);
        height[Netlist.GROUND] = 0;
        height[Netlist.RAIL] = 1;
        double[] weight = new double[height.length], sum = new double[height.length];
        for (int sweep = 0; sweep < SWEEPS; sweep++) {
            Arrays.fill(weight, 1e-6);
            Arrays.fill(sum, 0.5e-6);
            for (Element element : netlist.elements()) pull(element, height, weight, sum);
            for (int net = Netlist.RAIL + 1; net < height.length; net++) height[net] = sum[net] / weight[net];
        }
        return height;
    }

    private static void pull(Element element, double[] height, double[] weight, double[] sum) {
        List<Integer> nets = element.nets();
        for (int a = 0; a < nets.size(); a++)
            for (int b = 0; b < nets.size(); b++) {
                if (a == b) continue;
                double g = conductance(element, a, b);
                weight[nets.get(a)] += g;
                sum[nets.get(a)] += g * height[nets.get(b)];
            }
    }

    private static double conductance(Element element, int a, int b) {
        Glyph glyph = element.glyph();
        if (element.isWindings()) return a / 2 == b / 2 ? 10 : 0;
        return switch (glyph) {
            case COIL, SLUG_COIL, LOOPSTICK -> 10;
            case RESISTOR, PRESET, LOAD -> 1;
            case CAPACITOR, TRIMMER, AERIAL, CRYSTAL, TUNING_DIODE -> 1e-3;
            default -> glyph.isDevice() && (isControl(element, a) || isControl(element, b)) ? 0.02 : 0.5;
        };
    }

    static boolean isControl(Element element, int pin) {
        return element.glyph().isDevice() && element.glyph().pins().get(pin).side() == Glyph.Side.W;
    }

    /** Pairs of elements {driver, driven}; two that drive one another are left out. */
    List<int[]> flow() {
        List<int[]> edges = new ArrayList<>();
        Set<Long> seen = new HashSet<>();
        int n = netlist.elements().size();
        for (int a = 0; a < n; a++)
            for (int b : drivenBy(a)) if (seen.add((long) a * n + b)) edges.add(new int[] {a, b});
        edges.removeIf(e -> seen.contains((long) e[1] * n + e[0]));
        return edges;
    }

    private Set<Integer> drivenBy(int driver) {
        Element element = netlist.elements().get(driver);
        Set<Integer> driven = new HashSet<>();
        boolean source = element.glyph() == Glyph.ALTERNATING_VOLTAGE || element.glyph() == Glyph.STEREO;
        if (!source && !element.glyph().isDevice()) return driven;
        Deque<int[]> open = new ArrayDeque<>();
        Set<Integer> reached = new HashSet<>();
        for (int pin = 0; pin < element.nets().size(); pin++)
            if (!isControl(element, pin)) open.add(new int[] {element.nets().get(pin), 0});
        while (!open.isEmpty()) {
            int[] now = open.removeFirst();
            if (now[0] <= Netlist.RAIL || !reached.add(now[0])) continue;
            for (int k = 0; k < netlist.elements().size(); k++) {
                Element other = netlist.elements().get(k);
                if (k == driver || !other.nets().contains(now[0])) continue;
                for (int pin = 0; pin < other.nets().size(); pin++)
                    if (isControl(other, pin) && other.nets().get(pin) == now[0]) driven.add(k);
                if (now[1] < MOST_BETWEEN && isSeries(other))
                    for (int net : other.nets()) open.add(new int[] {net, now[1] + 1});
            }
        }
        return driven;
    }

    private static boolean isSeries(Element element) {
        return !element.glyph().isDevice()
                && element.glyph() != Glyph.ALTERNATING_VOLTAGE
                && element.glyph() != Glyph.STEREO
                && element.glyph() != Glyph.DIRECT_VOLTAGE;
    }
}
