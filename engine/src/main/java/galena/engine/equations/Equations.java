package galena.engine.equations;

import galena.engine.circuit.Circuit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** The equations of one circuit at one temperature. Immutable; evaluations are written to an {@link Evaluation}. */
public final class Equations {
    private static final double[] NONE = {};

    private final Circuit circuit;
    private final Map<String, Integer> unknowns;
    private final List<String> names;
    private final Pattern pattern;
    private final double[] g;
    private final double[] c;
    private final double[] rest;
    private final Element[] elements;
    private final VaryingSource[] varying;
    private final int junctions;
    private final int bends;
    private final Map<String, List<Element>> elementsOf;
    private final Map<String, List<LinearBranch>> branchesOf;

    private Equations(Circuit circuit, Map<String, Function<Assembly, Element>> further) {
        this.circuit = circuit;
        Assembly assembly = new Assembly(circuit);
        further.forEach((part, element) ->
                assembly.elements.computeIfAbsent(part, n -> new ArrayList<>()).add(element.apply(assembly)));
        unknowns = Map.copyOf(assembly.unknowns);
        names = List.copyOf(assembly.unknowns.keySet());
        pattern = assembly.pattern();
        g = Arrays.copyOf(assembly.g, pattern.entries());
        c = Arrays.copyOf(assembly.c, pattern.entries());
        g[0] = 0;
        c[0] = 0;
        rest = assembly.rest;
        elementsOf = assembly.elements;
        branchesOf = assembly.branches;
        elements = elementsOf.values().stream().flatMap(List::stream).toArray(Element[]::new);
        junctions = assembly.junctions;
        bends = Arrays.stream(elements).mapToInt(Element::bends).sum();
        varying = assembly.varying.toArray(VaryingSource[]::new);
    }

    public static Equations of(Circuit circuit) {
        return new Equations(circuit, Map.of());
    }

    /** With further elements laid over named parts: textbook laws that no part has, for checks of the solvers. */
    static Equations of(Circuit circuit, Map<String, Function<Assembly, Element>> further) {
        return new Equations(circuit, further);
    }

    public Circuit circuit() {
        return circuit;
    }

    public Pattern pattern() {
        return pattern;
    }

    /** Unknowns; they are numbered 1 to this. */
    public int size() {
        return pattern.size();
    }

    /** Length of a vector of unknowns: ground's place first, so one more than {@link #size()}. */
    public int stride() {
        return pattern.size() + 1;
    }

    /** The number of nets' unknowns, inner nets apart: unknowns 1 to this are the circuit's nets in its order. */
    public int nets() {
        return circuit.nets().size();
    }

    /** What unknown k is, in words. */
    public String name(int k) {
        return names.get(k);
    }

    /** True for a current, false for a voltage. */
    public boolean isCurrent(int k) {
        return names.get(k).startsWith(Assembly.currentName(""));
    }

    /** The unknown of a net; 0 for ground.
     *
     * @throws IllegalArgumentException when the circuit has no such net */
    public int net(String name) {
        Integer index = unknowns.get(name);
        if (index == null) throw new IllegalArgumentException("the circuit has no net " + name);
        return index;
    }

    /** The unknown that is the current into the first pin of a coil, resonator, battery or voltage source. */
    public Optional<Integer> current(String part) {
        return Optional.ofNullable(unknowns.get(Assembly.currentName(part)));
    }

    /** The unknown of a name that {@link #name} gives, if there is one. */
    public Optional<Integer> unknown(String name) {
        return Optional.ofNullable(unknowns.get(name));
    }

    /** The entry of the pattern at a row and column, or 0 when there is none. */
    public int entry(int row, int column) {
        for (int e = 1; e < pattern.entries(); e++) {
            if (pattern.row(e) == row && pattern.column(e) == column) return e;
        }
        return 0;
    }

    public Evaluation newEvaluation() {
        return new Evaluation(stride(), pattern.entries());
    }

    /**
     * Evaluates currents, charges and their derivatives with every source at rest.
     *
     * @param x read; unknowns from {@code offset} on, the first of them ground's zero
     * @param out written
     */
    public void evaluate(double[] x, int offset, Evaluation out) {
        double[] i = out.i, q = out.q;
        System.arraycopy(rest, 0, i, 0, i.length);
        Arrays.fill(q, 0);
        System.arraycopy(g, 0, out.g, 0, g.length);
        System.arraycopy(c, 0, out.c, 0, c.length);
        for (int e = 1; e < g.length; e++) {
            double value = x[offset + pattern.column(e)];
            int row = pattern.row(e);
            i[row] += g[e] * value;
            q[row] += c[e] * value;
        }
        for (Element element : elements) element.add(x, offset, out);
    }

    /**
     * The same with every junction replaced by its tangent at a voltage of its own.
     *
     * @param tangents voltages, {@link #junctions()} of them from {@code at} on; read
     */
    public void evaluate(double[] x, int offset, double[] tangents, int at, Evaluation out) {
        out.tangents = tangents;
        out.tangentAt = at;
        evaluate(x, offset, out);
        out.tangents = NONE;
    }

    /** Voltages with an exponential law. */
    public int junctions() {
        return junctions;
    }

    /**
     * Moves every junction's tangent towards x, as far as it can be believed.
     *
     * @param tangents voltages, {@link #junctions()} of them from {@code at} on; changed
     * @return how far the farthest still is from where x puts its junction, in volts by which its current grows by e
     */
    public double lead(double[] x, int offset, double[] tangents, int at) {
        double farthest = 0;
        for (Element element : elements) farthest = Math.max(farthest, element.lead(x, offset, tangents, at));
        return farthest;
    }

    /** Quantities through whose zeros a device's law bends: its second derivative steps there. */
    public int bends() {
        return bends;
    }

    /**
     * Writes those quantities at x.
     *
     * @param x read; unknowns from {@code offset} on
     * @param out written; {@link #bends()} numbers
     */
    public void bends(double[] x, int offset, double[] out) {
        int at = 0;
        for (Element element : elements) {
            element.bends(x, offset, out, at);
            at += element.bends();
        }
    }

    /** What the sources at rest put into a row: amperes into a net, volts into a source's row. */
    public double rest(int row) {
        return rest[row];
    }

    /** Adds a share of the sources' departure from rest at a time (s) to an evaluation's currents. */
    public void addSources(double time, double share, Evaluation out) {
        for (VaryingSource source : varying) source.add(time, share, out.i);
    }

    /** Watts that the named part takes up at a time (s) beyond {@link #power}, through its source's departure from rest. */
    public double departurePower(String part, double time, double[] x, int offset) {
        double watts = 0;
        for (VaryingSource source : varying) {
            if (source.part().equals(part)) watts += source.power(time, x, offset);
        }
        return watts;
    }

    /** Frequencies (Hz) of the alternating sources. */
    public double[] sourceFrequencies() {
        return Arrays.stream(varying)
                .mapToDouble(s -> s.wave().frequency())
                .distinct()
                .sorted()
                .toArray();
    }

    /** The right-hand side of a small-signal question: what the named source's departure by one unit takes from every row. */
    public double[] unitDeparture(String source) {
        double[] rhs = new double[stride()];
        int current = current(source).orElse(0);
        if (current > 0) {
            rhs[current] = -1;
        } else {
            var part = circuit.part(source).orElseThrow(() -> new IllegalArgumentException("no source " + source));
            rhs[net(part.nets().get(0))] -= 1;
            rhs[net(part.nets().get(1))] += 1;
            rhs[0] = 0;
        }
        return rhs;
    }

    /** Watts that the named part takes up in conduction at x with sources at rest; below zero for what it delivers. */
    public double power(String part, double[] x, int offset, Evaluation work) {
        double watts = 0;
        for (Element element : elementsOf.getOrDefault(part, List.of())) watts += element.power(x, offset, work);
        for (LinearBranch branch : branchesOf.getOrDefault(part, List.of())) watts += branch.power(x, offset);
        return watts;
    }

    /**
     * wᵀ G v of the named part alone at x: how its conduction enters a perturbation of the mode v with left vector w.
     *
     * @param x unknowns by number, ground first; read
     * @param w real vector; read
     * @param v real vector; read
     * @param work overwritten
     */
    public double conduction(String part, double[] x, double[] w, double[] v, Evaluation work) {
        double sum = 0;
        for (LinearBranch branch : branchesOf.getOrDefault(part, List.of())) sum += branch.form(w, v);
        Arrays.fill(work.g, 0);
        for (Element element : elementsOf.getOrDefault(part, List.of())) element.add(x, 0, work);
        for (int e = 1; e < work.g.length; e++) sum += work.g[e] * w[pattern.row(e)] * v[pattern.column(e)];
        return sum;
    }

    /** Rows that can hold charge or flux, ascending. */
    public int[] chargedRows() {
        boolean[] charged = new boolean[stride()];
        Evaluation probe = newEvaluation();
        evaluate(new double[stride()], 0, probe);
        for (int e = 1; e < pattern.entries(); e++) if (probe.c[e] != 0) charged[pattern.row(e)] = true;
        int count = 0;
        int[] rows = new int[size()];
        for (int row = 1; row <= size(); row++) if (charged[row]) rows[count++] = row;
        return Arrays.copyOf(rows, count);
    }
}
