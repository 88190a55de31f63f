package galena.packet.schematic;

import galena.packet.schematic.Glyph.Pin;
import galena.packet.schematic.Glyph.Side;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A drawing in the making: where every symbol stands and on which line every net lies, and what a reader would dislike in it.
 * The dislike is a sum over single things and pairs of things, so that a move is weighed by looking at what moved. Things are
 * the elements, then the nets. Mutable; one per search.
 *
 * <p>Numbers live in flat arrays because a search weighs some hundred thousand moves.
 */
final class Board {
    /** Between the lines of two nets; symbols stand half-way. */
    static final int ROW = 90;

    static final int HALF = ROW / 2;
    /** How far beside a side pin its wire turns. */
    static final int JOG = 10;

    private static final double WRONG_WAY = 70;
    private static final double TURNED = 3;
    private static final double CORNER = 1.2;
    private static final double LENGTH = 0.045;
    private static final double WIDTH = 0.02;
    private static final double HEIGHT = 0.1;
    private static final double STANDING = 0.7;
    private static final double BACKWARDS = 14;
    private static final double BACKWARDS_MORE = 0.1;
    private static final int STEP_RIGHT = 70;
    private static final double LYING_FROM_RAIL = 14;
    private static final double UPSIDE_DOWN = 60;
    private static final double RAIL_IS_CHEAPER = 0.3;

    final Netlist netlist;
    final int elements;
    final int things;
    final Variant[][] variants;
    final int[] x;
    /** In half rows. */
    final int[] y;

    final int[] variant;
    /** In rows; the rail has row 0, ground none. */
    final int[] row;

    final int lowestRow;
    /** How much worse a fault is than usual: 1 lets a search pass through faults on its way, more sees that none remains. */
    final double severity;

    final int[][] nets;
    /** Elements with a pin on each net. */
    final int[][] on;

    private final double[] height;
    private final List<int[]> flow;
    private final Box railFlag;
    private final int[][] shapes;
    private final int[] filled;
    private final int[][] bounds;
    private final double[] single;
    /** Where the pins of each element meet their nets' lines; {@link #NOWHERE} for pins that don't. */
    private final int[][] meet;

    private final boolean[][] fromAside;
    /** Dislike of each variant for standing against the course of the circuit. */
    private final double[][] stood;

    static final int NOWHERE = Integer.MIN_VALUE;

    Board(Netlist netlist, double severity) {
        this.netlist = netlist;
        this.severity = severity;
        elements = netlist.elements().size();
        things = elements + netlist.nets().size();
        variants = new Variant[elements][];
        for (int e = 0; e < elements; e++)
            variants[e] = Variant.of(netlist.elements().get(e)).toArray(Variant[]::new);
        x = new int[elements];
        y = new int[elements];
        variant = new int[elements];
        row = new int[netlist.nets().size()];
        nets = netlist.elements().stream()
                .map(e -> e.nets().stream().mapToInt(n -> n).toArray())
                .toArray(int[][]::new);
        on = new int[netlist.nets().size()][];
        for (int net = 0; net < on.length; net++) {
            int wanted = net;
            on[net] = IntStream.range(0, elements)
                    .filter(e -> Arrays.stream(nets[e]).anyMatch(n -> n == wanted))
                    .toArray();
        }
        Course course = new Course(netlist);
        railFlag = railBox();
        height = course.heights();
        flow = course.flow();
        stood = new double[elements][];
        for (int e = 0; e < elements; e++) {
            stood[e] = new double[variants[e].length];
            for (int v = 0; v < stood[e].length; v++) stood[e][v] = stood(e, variants[e][v]);
        }
        lowestRow = Math.max(4, Math.min(9, 2 + netlist.nets().size() / 2));
        shapes = new int[things][Clash.STRIDE * 24];
        filled = new int[things];
        bounds = new int[things][4];
        single = new double[things];
        meet = new int[elements][];
        fromAside = new boolean[elements][];
        for (int e = 0; e < elements; e++) {
            meet[e] = new int[nets[e].length];
            fromAside[e] = new boolean[meet[e].length];
        }
    }

    /** A device stands with its higher net on top; whatever is joined to rail or ground does not lie. */
    private double stood(int e, Variant v) {
        double cost = 0;
        boolean lying = v.turn().a() == 0;
        double top = 0, foot = 0;
        for (int p = 0; p < nets[e].length; p++) {
            if (lying && nets[e][p] <= Netlist.RAIL) cost += LYING_FROM_RAIL;
            if (v.pins().get(p).side() == Side.N) top = height[nets[e][p]];
            if (v.pins().get(p).side() == Side.S) foot = height[nets[e][p]];
        }
        if (!lying && top < foot - 1e-9) cost += element(e).glyph().isDevice() ? UPSIDE_DOWN : 1;
        return cost;
    }

    Element element(int e) {
        return netlist.elements().get(e);
    }

    Variant shown(int e) {
        return variants[e][variant[e]];
    }

    /** The second pin on one side turns further out. */
    static int jog(Pin pin) {
        int beyond = pin.y() == 0 ? JOG : 2 * JOG;
        return pin.side() == Side.W ? pin.x() - beyond : pin.x() + beyond;
    }

    int wantedRow(int net) {
        return 1 + (int) Math.round((1 - height[net]) * (lowestRow - 1));
    }

    List<int[]> flow() {
        return flow;
    }

    /** Whether an element in this variant belongs on lines rather than between them. */
    boolean onLine(int e, int v) {
        return netlist.elements().get(e).glyph().standsOnLine()
                || variants[e][v].turn().a() == 0;
    }

    void refreshAll() {
        for (int t = 0; t < things; t++) refresh(t);
    }

    /** Draws a thing anew after it moved. Nets come after their elements. */
    void refresh(int thing) {
        filled[thing] = 0;
        int[] around = bounds[thing];
        around[0] = around[1] = Integer.MAX_VALUE / 2;
        around[2] = around[3] = Integer.MIN_VALUE / 2;
        if (thing < elements) refreshElement(thing);
        else refreshNet(thing - elements);
    }

    private void put(int thing, int kind, int net, int left, int top, int right, int bottom) {
        int[] s = shapes[thing];
        int at = filled[thing] * Clash.STRIDE;
        s[at] = kind;
        s[at + 1] = net;
        s[at + 2] = left;
        s[at + 3] = top;
        s[at + 4] = right;
        s[at + 5] = bottom;
        filled[thing]++;
        int[] around = bounds[thing];
        around[0] = Math.min(around[0], left);
        around[1] = Math.min(around[1], top);
        around[2] = Math.max(around[2], right);
        around[3] = Math.max(around[3], bottom);
    }

    private void wire(int thing, int net, int x1, int y1, int x2, int y2) {
        put(thing, Clash.WIRE, net, Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2));
        double cheaper = net == Netlist.RAIL ? RAIL_IS_CHEAPER : 1;
        single[thing] += cheaper * LENGTH * (Math.abs(x2 - x1) + Math.abs(y2 - y1));
    }

    private void box(int thing, int kind, Box box, int dx, int dy) {
        put(thing, kind, -1, box.left() + dx, box.top() + dy, box.right() + dx, box.bottom() + dy);
    }

    private void refreshElement(int e) {
        Variant shown = shown(e);
        int px = x[e], py = y[e] * HALF;
        single[e] = shown.dislike() + stood[e][variant[e]];
        box(e, Clash.BODY, shown.body(), px, py);
        for (Box label : shown.labels()) box(e, Clash.LABEL, label, px, py);
        for (int p = 0; p < meet[e].length; p++) {
            meet[e][p] = NOWHERE;
            fromAside[e][p] = true;
            pin(e, p, shown.pins().get(p), nets[e][p], px, py, shown.railSymbol());
        }
        single[e] += ownClashes(e);
    }

    /** Supply and sources stand on the left, what radiates on the right. */
    private static double pull(Glyph glyph, int fromLeft, int fromRight) {
        return switch (glyph) {
            case BATTERY, DIRECT_VOLTAGE -> 0.03 * fromLeft;
            case ALTERNATING_VOLTAGE -> 0.01 * fromLeft;
            case LOOPSTICK -> 0.015 * fromRight;
            case AERIAL -> 0.05 * fromRight;
            default -> 0;
        };
    }

    private void pin(int e, int p, Pin pin, int net, int px, int py, boolean railSymbol) {
        int at = px + pin.x(), level = py + pin.y();
        lead(e, net, pin, at, level, px, py);
        boolean across = pin.side() == Side.W || pin.side() == Side.E;
        int turn = px + jog(pin);
        if (net == Netlist.GROUND || (net == Netlist.RAIL && railSymbol)) {
            boolean wrong = pin.side() == (net == Netlist.GROUND ? Side.N : Side.S);
            if (wrong) single[e] += WRONG_WAY;
            if (across) {
                wire(e, net, at, level, turn, level);
                single[e] += TURNED;
            }
            Box symbol = net == Netlist.GROUND ? Glyph.GROUND.body() : railFlag;
            box(e, Clash.BODY, symbol, across ? turn : at, level);
            return;
        }
        int line = row[net] * ROW;
        if (pin.side() == Side.ON) {
            meet[e][p] = at;
            return;
        }
        if (across) {
            if (line == level) {
                meet[e][p] = at;
                return;
            }
            single[e] += TURNED;
            wire(e, net, at, level, turn, level);
            wire(e, net, turn, level, turn, line);
            meet[e][p] = turn;
            fromAside[e][p] = false;
            return;
        }
        if (pin.side() == Side.N ? line >= level : line <= level) {
            single[e] += WRONG_WAY + 0.1 * Math.abs(line - level);
            return;
        }
        wire(e, net, at, level, at, line);
        meet[e][p] = at;
        fromAside[e][p] = false;
    }

    /** The piece of wire between a pin and the symbol's body. */
    private void lead(int e, int net, Pin pin, int at, int level, int px, int py) {
        Box body = shown(e).body();
        switch (pin.side()) {
            case N -> wire(e, net, at, level, at, py + body.top());
            case S -> wire(e, net, at, level, at, py + body.bottom());
            case W -> wire(e, net, at, level, px + body.left(), level);
            case E -> wire(e, net, at, level, px + body.right(), level);
            case ON -> wire(e, net, at, level, at, py + body.bottom());
        }
    }

    private Box railBox() {
        String name = netlist.nets().get(Netlist.RAIL);
        Box words = Lettering.box(name, Lettering.VALUE_SIZE, 0, -9, Lettering.Anchor.MIDDLE);
        return words.with(Glyph.RAIL.body());
    }

    /** Words under the symbol's own wires, wires of two of its pins in one another's way. */
    private double ownClashes(int e) {
        double cost = 0;
        int[] own = shapes[e];
        for (int i = 0, end = filled[e] * Clash.STRIDE; i < end; i += Clash.STRIDE)
            for (int j = 0; j < i; j += Clash.STRIDE) {
                boolean words = (own[i] == Clash.LABEL) != (own[j] == Clash.LABEL);
                if (words && Clash.near(own, i, own, j, 2)) cost += Clash.COLLISION;
                if (own[i] == Clash.WIRE && own[j] == Clash.WIRE && own[i + 1] != own[j + 1])
                    cost += Clash.wires(own, i, own, j);
            }
        return cost;
    }

    private void refreshNet(int net) {
        int thing = elements + net;
        single[thing] = 0;
        if (net == Netlist.GROUND) return;
        int first = Integer.MAX_VALUE, last = Integer.MIN_VALUE;
        boolean firstAside = false, lastAside = false;
        for (int e : on[net]) {
            for (int p = 0; p < meet[e].length; p++) {
                if (nets[e][p] != net || meet[e][p] == NOWHERE) continue;
                if (meet[e][p] < first) {
                    first = meet[e][p];
                    firstAside = false;
                }
                if (meet[e][p] > last) {
                    last = meet[e][p];
                    lastAside = false;
                }
                if (meet[e][p] == first) firstAside |= fromAside[e][p];
                if (meet[e][p] == last) lastAside |= fromAside[e][p];
            }
        }
        if (first < last) single[thing] += backOverPins(net, first, last);
        if (net != Netlist.RAIL) single[thing] += STANDING * Math.abs(row[net] - wantedRow(net));
        if (first >= last) return;
        wire(thing, net, first, row[net] * ROW, last, row[net] * ROW);
        if (net == Netlist.RAIL) return;
        if (!firstAside) single[thing] += CORNER;
        if (!lastAside) single[thing] += CORNER;
    }

    /** A line that runs back over the pin from which it should lead away. */
    private double backOverPins(int net, int first, int last) {
        double cost = 0;
        for (int e : on[net])
            for (int p = 0; p < meet[e].length; p++) {
                if (nets[e][p] != net || meet[e][p] == NOWHERE || !fromAside[e][p]) continue;
                Side side = shown(e).pins().get(p).side();
                boolean back = side == Side.E ? first < meet[e][p] : side == Side.W && last > meet[e][p];
                if (back) cost += Clash.COLLISION;
            }
        return cost;
    }

    double single(int thing) {
        return single[thing];
    }

    /** What a reader would dislike in two things together. */
    double pair(int one, int other) {
        int[] around = bounds[one], beside = bounds[other];
        if (around[0] >= beside[2] + 12
                || beside[0] >= around[2] + 12
                || around[1] >= beside[3] + 12
                || beside[1] >= around[3] + 12) return 0;
        double cost = 0;
        int[] a = shapes[one], b = shapes[other];
        for (int i = 0, ends = filled[one] * Clash.STRIDE; i < ends; i += Clash.STRIDE) {
            if (a[i + 2] >= beside[2] + 12
                    || beside[0] >= a[i + 4] + 12
                    || a[i + 3] >= beside[3] + 12
                    || beside[1] >= a[i + 5] + 12) continue;
            for (int j = 0, end = filled[other] * Clash.STRIDE; j < end; j += Clash.STRIDE)
                if (Clash.near(a, i, b, j, 12)) cost += weighed(Clash.of(a, i, b, j));
        }
        return cost;
    }

    private double weighed(double clash) {
        return clash >= Clash.COLLISION ? severity * clash : clash;
    }

    /** Size of the whole and signals that run backwards. */
    double whole() {
        int left = Integer.MAX_VALUE, right = Integer.MIN_VALUE, low = 0;
        for (int e = 0; e < elements; e++) {
            Box body = shown(e).body();
            left = Math.min(left, x[e] + body.left());
            right = Math.max(right, x[e] + body.right() + 40);
            low = Math.max(low, y[e]);
        }
        double cost = WIDTH * (right - left) + HEIGHT * low * HALF;
        for (int e = 0; e < elements; e++) cost += pull(element(e).glyph(), x[e] - left, right - x[e]);
        for (int[] edge : flow) {
            int missing = STEP_RIGHT - (x[edge[1]] - x[edge[0]]);
            if (missing > 0) cost += BACKWARDS + BACKWARDS_MORE * missing;
        }
        return cost;
    }

    double total() {
        double cost = whole();
        for (int a = 0; a < things; a++) {
            cost += single[a];
            for (int b = a + 1; b < things; b++) cost += pair(a, b);
        }
        return cost;
    }

    /** Copies places from another board of the same netlist. */
    void take(Board other) {
        System.arraycopy(other.x, 0, x, 0, elements);
        System.arraycopy(other.y, 0, y, 0, elements);
        System.arraycopy(other.variant, 0, variant, 0, elements);
        System.arraycopy(other.row, 0, row, 0, row.length);
        refreshAll();
    }

    @Override
    public String toString() {
        return "x " + Arrays.toString(x) + " y " + Arrays.toString(y) + " rows " + Arrays.toString(row);
    }
}
