package galena.engine.equations;

import galena.engine.circuit.Circuit;
import galena.engine.law.AmplifierLaw;
import galena.engine.law.ChannelLaw;
import galena.engine.law.JunctionLaw;
import galena.engine.law.TransportLaw;
import galena.engine.part.Battery;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.CurrentSource;
import galena.engine.part.Diode;
import galena.engine.part.DualGateMosfet;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Load;
import galena.engine.part.Mosfet;
import galena.engine.part.OpAmp;
import galena.engine.part.Part;
import galena.engine.part.Preset;
import galena.engine.part.Resistor;
import galena.engine.part.Resonator;
import galena.engine.part.Trimmer;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Numbers the unknowns of a circuit and writes each part into the equations, once. */
final class Assembly {
    /** Copper's resistance per kelvin at 20 °C, IEC 60028; at 25 °C the same to 2 %. */
    private static final double COPPER_PER_KELVIN = 3.93e-3;

    final Map<String, Integer> unknowns = new LinkedHashMap<>();
    final Map<String, List<LinearBranch>> branches = new LinkedHashMap<>();
    final Map<String, List<Element>> elements = new LinkedHashMap<>();
    final List<VaryingSource> varying = new ArrayList<>();
    private final Map<Long, Integer> entries = new LinkedHashMap<>();
    private final Circuit circuit;
    private final double warmth;
    double[] g = new double[64];
    double[] c = new double[64];
    double[] rest;
    /** Junctions so far: voltages with an exponential law. */
    int junctions;

    Assembly(Circuit circuit) {
        this.circuit = circuit;
        this.warmth = circuit.temperature() - Circuit.REFERENCE_TEMPERATURE;
        unknowns.put(Circuit.GROUND, 0);
        for (String net : circuit.nets()) unknowns.put(net, unknowns.size());
        for (Part part : circuit.parts()) numberInside(part);
        rest = new double[unknowns.size()];
        for (Part part : circuit.parts()) write(part);
    }

    /** Gives numbers to the inner nets and the currents of a part. */
    private void numberInside(Part part) {
        if (part instanceof Bipolar bipolar && bipolar.model().baseResistance() > 0) add(part, "inner base");
        if (part instanceof DualGateMosfet) add(part, "between channels");
        if (part instanceof OpAmp) add(part, "gain stage");
        if (part instanceof Resonator) add(part, "between L and C");
        if (part instanceof Coil
                || part instanceof VoltageSource
                || part instanceof Battery
                || part instanceof Resonator) {
            unknowns.put(currentName(part.name()), unknowns.size());
        }
    }

    private void add(Part part, String inside) {
        unknowns.put(innerName(part.name(), inside), unknowns.size());
    }

    static String currentName(String part) {
        return "current of " + part;
    }

    private static String innerName(String part, String inside) {
        return part + " (" + inside + ")";
    }

    private int net(String name) {
        return Objects.requireNonNull(unknowns.get(name));
    }

    private int inner(Part part, String inside) {
        return net(innerName(part.name(), inside));
    }

    private int current(String part) {
        return net(currentName(part));
    }

    Pattern pattern() {
        int[] rows = new int[entries.size() + 1], columns = new int[entries.size() + 1];
        entries.forEach((key, entry) -> {
            rows[entry] = (int) (key >> 32);
            columns[entry] = key.intValue();
        });
        return new Pattern(unknowns.size() - 1, rows, columns);
    }

    /** The number of an entry, given on first asking; 0 for ground's row or column. */
    int entry(int row, int column) {
        if (row == 0 || column == 0) return 0;
        int entry = entries.computeIfAbsent(((long) row << 32) | column, key -> entries.size() + 1);
        if (entry >= g.length) {
            g = Arrays.copyOf(g, 2 * g.length);
            c = Arrays.copyOf(c, 2 * c.length);
        }
        return entry;
    }

    private void write(Part part) {
        if (part instanceof Resistor r) {
            conductance(part, net(r.from()), net(r.to()), 1 / warm(r.resistance(), r.temperatureCoefficient()));
        } else if (part instanceof Preset p) {
            conductance(part, net(p.from()), net(p.wiper()), 1 / p.lower());
            conductance(part, net(p.wiper()), net(p.to()), 1 / p.upper());
        } else if (part instanceof Load load) {
            conductance(part, net(load.from()), net(load.to()), 1 / load.resistance());
            capacitance(net(load.from()), net(load.to()), load.capacitance());
        } else if (part instanceof Capacitor cap) {
            capacitance(net(cap.from()), net(cap.to()), warm(cap.capacitance(), cap.temperatureCoefficient()));
        } else if (part instanceof Trimmer t) {
            capacitance(net(t.from()), net(t.to()), warm(t.capacitance(), t.temperatureCoefficient()));
        } else if (part instanceof Coil coil) {
            coil(coil);
        } else if (part instanceof Coupling coupling) {
            coupling(coupling);
        } else if (part instanceof Resonator resonator) {
            resonator(resonator);
        } else if (part instanceof VoltageSource source) {
            source(part, net(source.plus()), net(source.minus()), 0, source.wave());
        } else if (part instanceof Battery battery) {
            source(
                    part,
                    net(battery.plus()),
                    net(battery.minus()),
                    battery.internalResistance(),
                    new Wave.Direct(battery.emf()));
        } else if (part instanceof CurrentSource source) {
            current(source);
        } else {
            device(part);
        }
    }

    private void device(Part part) {
        if (part instanceof Diode diode) {
            junction(part, diode.junction(), 1, net(diode.anode()), net(diode.cathode()));
        } else if (part instanceof Bipolar bipolar) {
            bipolar(bipolar);
        } else if (part instanceof Jfet jfet) {
            int sign = jfet.polarity().sign(), d = net(jfet.drain()), gate = net(jfet.gate()), s = net(jfet.source());
            nonlinear(
                    part,
                    new ChannelElement(this, ChannelLaw.of(jfet.model(), circuit.temperature()), sign, d, gate, s));
            junction(part, jfet.model().gateSource(), sign, gate, s);
            junction(part, jfet.model().gateDrain(), sign, gate, d);
        } else if (part instanceof Mosfet mosfet) {
            channel(
                    part,
                    mosfet.model(),
                    mosfet.polarity().sign(),
                    net(mosfet.drain()),
                    net(mosfet.gate()),
                    net(mosfet.source()));
        } else if (part instanceof DualGateMosfet dual) {
            int middle = inner(part, "between channels"), sign = dual.polarity().sign();
            channel(part, dual.lower(), sign, middle, net(dual.gate1()), net(dual.source()));
            channel(part, dual.upper(), sign, net(dual.drain()), net(dual.gate2()), middle);
        } else if (part instanceof OpAmp amplifier) {
            amplifier(amplifier);
        } else {
            throw new IllegalStateException("no equations for " + part.getClass());
        }
    }

    /** The gain's resistance runs to both rails, so that the output rests between them. */
    private void amplifier(OpAmp part) {
        OpAmp.Model model = part.model();
        int a = net(part.noninverting()), b = net(part.inverting()), out = net(part.output());
        int plus = net(part.plus()), minus = net(part.minus()), inside = inner(part, "gain stage");
        double half = AmplifierLaw.transconductance(model) / model.gain() / 2;
        conductance(part, plus, inside, half);
        conductance(part, inside, minus, half);
        conductance(part, a, b, 1 / model.inputResistance());
        capacitance(inside, minus, AmplifierLaw.COMPENSATION);
        nonlinear(
                part,
                new AmplifierElement(this, new AmplifierLaw(model), model.inputBias(), a, b, out, plus, minus, inside));
    }

    private double warm(double value, double coefficient) {
        return value * (1 + coefficient * warmth);
    }

    private void conductance(Part part, int a, int b, double siemens) {
        stamp(true, a, b, siemens);
        branches.computeIfAbsent(part.name(), n -> new ArrayList<>()).add(LinearBranch.conductance(a, b, siemens));
    }

    private void capacitance(int a, int b, double farads) {
        stamp(false, a, b, farads);
    }

    private void stamp(boolean intoG, int a, int b, double value) {
        int aa = entry(a, a), ab = entry(a, b), ba = entry(b, a), bb = entry(b, b);
        double[] matrix = intoG ? g : c;
        matrix[aa] += value;
        matrix[ab] -= value;
        matrix[ba] -= value;
        matrix[bb] += value;
    }

    private void set(boolean intoG, int row, int column, double value) {
        int entry = entry(row, column); // may replace the arrays
        (intoG ? g : c)[entry] += value;
    }

    /** The current of a branch leaves net a and enters net b; its row starts with −(v_a − v_b). */
    private void branch(int a, int b, int current) {
        set(true, a, current, 1);
        set(true, b, current, -1);
        set(true, current, a, -1);
        set(true, current, b, 1);
    }

    private void coil(Coil coil) {
        int a = net(coil.from()), b = net(coil.to()), current = current(coil.name());
        double resistance = warm(coil.seriesResistance(), COPPER_PER_KELVIN);
        branch(a, b, current);
        set(true, current, current, resistance);
        set(false, current, current, warm(coil.inductance(), coil.temperatureCoefficient()));
        capacitance(
                a,
                b,
                coil.selfCapacitance()); // entered even at zero: the startup question loads coils with a conductance
        branches.computeIfAbsent(coil.name(), n -> new ArrayList<>())
                .add(LinearBranch.carrying(current, resistance, 0));
    }

    private void coupling(Coupling coupling) {
        Coil first = coil(coupling.first()), second = coil(coupling.second());
        double mutual = coupling.k()
                * Math.sqrt(warm(first.inductance(), first.temperatureCoefficient())
                        * warm(second.inductance(), second.temperatureCoefficient()));
        set(false, current(first.name()), current(second.name()), mutual);
        set(false, current(second.name()), current(first.name()), mutual);
    }

    private Coil coil(String name) {
        return (Coil) circuit.part(name).orElseThrow();
    }

    private void resonator(Resonator r) {
        int a = net(r.from()), b = net(r.to()), middle = inner(r, "between L and C"), current = current(r.name());
        branch(a, middle, current);
        set(true, current, current, r.motionalResistance());
        set(false, current, current, r.motionalInductance());
        capacitance(middle, b, r.motionalCapacitance());
        capacitance(a, b, r.shuntCapacitance());
        branches.computeIfAbsent(r.name(), n -> new ArrayList<>())
                .add(LinearBranch.carrying(current, r.motionalResistance(), 0));
    }

    private void source(Part part, int plus, int minus, double resistance, Wave wave) {
        int current = current(part.name());
        branch(plus, minus, current);
        set(true, current, current, resistance);
        rest[current] += wave.rest();
        branches.computeIfAbsent(part.name(), n -> new ArrayList<>())
                .add(LinearBranch.carrying(current, resistance, wave.rest()));
        if (wave.frequency() > 0) varying.add(new VaryingSource(part.name(), current, 0, wave));
    }

    private void current(CurrentSource source) {
        int from = net(source.from()), to = net(source.to());
        rest[from] += source.wave().rest();
        rest[to] -= source.wave().rest();
        branches.computeIfAbsent(source.name(), n -> new ArrayList<>())
                .add(LinearBranch.driven(from, to, source.wave().rest()));
        if (source.wave().frequency() > 0) varying.add(new VaryingSource(source.name(), from, to, source.wave()));
    }

    private void bipolar(Bipolar part) {
        Bipolar.Model model = part.model();
        int sign = part.polarity().sign(), c = net(part.collector()), b = net(part.base()), e = net(part.emitter());
        if (model.baseResistance() > 0) {
            int inside = inner(part, "inner base");
            conductance(part, b, inside, 1 / model.baseResistance());
            b = inside;
        }
        nonlinear(part, new TransportElement(this, new TransportLaw(model, circuit.temperature()), sign, c, b, e));
        nonlinear(
                part,
                new JunctionElement(
                        this, new JunctionLaw(model.emitterJunction(), circuit.temperature()), sign, b, e, false));
        nonlinear(
                part,
                new JunctionElement(
                        this, new JunctionLaw(model.collectorJunction(), circuit.temperature()), sign, b, c, false));
        conductance(part, b, e, Junction.USUAL_LEAKAGE);
        conductance(part, b, c, Junction.USUAL_LEAKAGE);
    }

    private void channel(Part part, Mosfet.Model model, int sign, int d, int gate, int s) {
        nonlinear(part, new ChannelElement(this, ChannelLaw.of(model, circuit.temperature()), sign, d, gate, s));
        capacitance(gate, s, model.gateSourceCapacitance());
        capacitance(gate, d, model.gateDrainCapacitance());
        capacitance(d, s, model.drainSourceCapacitance());
        conductance(part, d, s, model.leakage());
        if (model.body() != null) junction(part, model.body(), sign, s, d);
    }

    private void junction(Part part, Junction junction, int sign, int a, int b) {
        nonlinear(part, new JunctionElement(this, new JunctionLaw(junction, circuit.temperature()), sign, a, b, true));
    }

    private void nonlinear(Part part, Element element) {
        elements.computeIfAbsent(part.name(), n -> new ArrayList<>()).add(element);
    }
}
