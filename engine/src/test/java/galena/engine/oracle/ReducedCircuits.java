package galena.engine.oracle;

import static galena.engine.oracle.HandLaws.VT;
import static galena.engine.oracle.HandLaws.channel;
import static galena.engine.oracle.HandLaws.depletion;
import static galena.engine.oracle.HandLaws.diode;

import galena.engine.Circuits;
import galena.engine.circuit.Circuit;
import galena.engine.part.Battery;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Diode;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Polarity;
import galena.engine.part.Resistor;

/** Circuits with their equations worked out by hand. Currents below are those leaving a net through everything but capacitances. */
final class ReducedCircuits {
    private static final double TWO_PI_MEGA = 2 * Math.PI * 1e6;

    private ReducedCircuits() {}

    /** Capacitance of the gate junctions of {@link Circuits#jfet}. */
    static double gate(double v) {
        return depletion(3e-12, 0.8, 0.5, v);
    }

    static double gateCurrent(double v) {
        return diode(1e-14, 1, v);
    }

    static ReducedCircuit groundedGateColpitts() {
        double resistance = TWO_PI_MEGA * 180e-6 / 80;
        return new ReducedCircuit(
                "grounded-gate Colpitts",
                Circuits.groundedGateColpitts(),
                new String[] {"rail", "drain", "source", "current of Lt"},
                1,
                3,
                (y, dy) -> {
                    double rail = y[0], drain = y[1], source = y[2], coil = y[3];
                    double jfet = channel(8e-3, -2.5, 0.01, 0, drain, source);
                    double intoDrain = coil - jfet + gateCurrent(-drain);
                    double intoSource = jfet - source / 680 + gateCurrent(-source);
                    double cd = 32.5e-12 + gate(-drain), cs = 1000e-12 + gate(-source), cf = 100e-12;
                    double determinant = (cd + cf) * (cs + cf) - cf * cf;
                    dy[0] = ((9 - rail) / 2 - coil) / 100e-9;
                    dy[1] = (intoDrain * (cs + cf) + intoSource * cf) / determinant;
                    dy[2] = (intoSource * (cd + cf) + intoDrain * cf) / determinant;
                    dy[3] = (rail - drain - resistance * coil) / 180e-6;
                });
    }

    static ReducedCircuit gateLeakHartley() {
        return hartley("Hartley with gate leak", Circuits.gateLeakHartley(), 80, 60, 160e-12, 220e3);
    }

    private static ReducedCircuit hartley(String name, Circuit circuit, double qa, double qb, double ct, double leak) {
        double la = 90e-6,
                lb = 6e-6,
                m = 0.9 * Math.sqrt(la * lb),
                ra = TWO_PI_MEGA * la / qa,
                rb = TWO_PI_MEGA * lb / qb;
        return new ReducedCircuit(
                name,
                circuit,
                new String[] {"rail", "top", "tap", "gate", "current of La", "current of Lb"},
                1,
                4,
                (y, dy) -> {
                    double rail = y[0], top = y[1], tap = y[2], gate = y[3], ia = y[4], ib = y[5];
                    double jfet = channel(8e-3, -2.5, 0.01, gate, rail, tap);
                    double toSource = gateCurrent(gate - tap), toDrain = gateCurrent(gate - rail);
                    double cgs = gate(gate - tap), cgd = gate(gate - rail);
                    double[] v = {
                        (9 - rail) / 2 - jfet + toDrain,
                        -ia,
                        ia - ib + jfet + toSource,
                        -gate / leak - toSource - toDrain
                    };
                    double[][] c = {
                        {100e-9 + cgd, 0, 0, -cgd},
                        {0, ct + 47e-12, 0, -47e-12},
                        {0, 0, 22e-12 + cgs, -cgs},
                        {-cgd, -47e-12, -cgs, 47e-12 + cgs + cgd}
                    };
                    HandLaws.solve(c, v);
                    System.arraycopy(v, 0, dy, 0, 4);
                    double ua = top - tap - ra * ia, ub = tap - rb * ib, determinant = la * lb - m * m;
                    dy[4] = (lb * ua - m * ub) / determinant;
                    dy[5] = (la * ub - m * ua) / determinant;
                });
    }

    /** Collector and base currents and the two capacitances of {@link Circuits#npn}. */
    record Transistor(double collector, double base, double ofEmitter, double ofCollector) {
        static Transistor at(double vc, double vb, double ve) {
            double vbe = vb - ve, vbc = vb - vc;
            double forward = 1e-14 * Math.expm1(vbe / VT), reverse = 1e-14 * Math.expm1(vbc / VT);
            double transport = (forward - reverse) * (1 - vbc / 80);
            double intoCollector = reverse / 4 + 1e-12 * vbc, intoEmitter = forward / 200 + 1e-12 * vbe;
            return new Transistor(
                    transport - intoCollector,
                    intoEmitter + intoCollector,
                    depletion(8e-12, 0.75, 0.35, vbe) + 0.4e-9 * 1e-14 * Math.exp(vbe / VT) / VT,
                    depletion(3e-12, 0.6, 0.33, vbc) + 50e-9 * 1e-14 * Math.exp(vbc / VT) / VT);
        }
    }

    /** The rail has no capacitance: its voltage follows from the currents. */
    static ReducedCircuit bipolarColpitts() {
        double resistance = TWO_PI_MEGA * 22e-6 / 60;
        return new ReducedCircuit(
                "common-base bipolar Colpitts",
                Circuits.bipolarColpitts(),
                new String[] {"base", "collector", "emitter", "current of Lt"},
                1,
                3,
                (y, dy) -> {
                    double base = y[0], collector = y[1], emitter = y[2], coil = y[3];
                    double rail = (9.0 / 2 - coil + base / 22e3 + collector / 4.7e3) / (1.0 / 2 + 1 / 22e3 + 1 / 4.7e3);
                    Transistor q = Transistor.at(collector, base, emitter);
                    double cbe = q.ofEmitter, cbc = q.ofCollector;
                    double[] v = {
                        (rail - base) / 22e3 - base / 10e3 - q.base,
                        coil + (rail - collector) / 4.7e3 - q.collector,
                        q.base + q.collector - emitter / 6.8e3
                    };
                    double[][] c = {
                        {10e-9 + cbe + cbc, -cbc, -cbe},
                        {-cbc, 1.2e-9 + cbc, -1.2e-9},
                        {-cbe, -1.2e-9, 11.2e-9 + cbe}
                    };
                    HandLaws.solve(c, v);
                    System.arraycopy(v, 0, dy, 0, 3);
                    dy[3] = (rail - collector - resistance * coil) / 22e-6;
                });
    }

    // what follows settles within a few dozen periods

    /** A Colpitts on a poor coil, clamped by two diodes behind a resistor; the diodes' net holds no charge. */
    static ReducedCircuit clampedColpitts() {
        Junction bare = Junction.silicon(1e-12, 1.5, 0, 0.7, 0.5, 0);
        Circuit circuit = Circuit.of(
                new Battery("B", "rail", "ground", 9, 2),
                new Capacitor("Cd", "rail", "ground", 100e-9),
                Coil.ofQ("Lt", "rail", "drain", 180e-6, 12, 1e6),
                new Capacitor("Ct", "drain", "rail", 40e-12),
                new Resistor("Rc", "drain", "clamp", 10e3),
                new Diode("D1", "clamp", "rail", bare),
                new Diode("D2", "rail", "clamp", bare),
                new Capacitor("Cf", "drain", "source", 100e-12),
                new Capacitor("Cs", "source", "ground", 680e-12),
                new Resistor("Rs", "source", "ground", 470),
                new Jfet("Q1", Polarity.N, "drain", "ground", "source", Circuits.jfet(8e-3, -2.5)));
        double resistance = TWO_PI_MEGA * 180e-6 / 12;
        return new ReducedCircuit(
                "Colpitts with clamping diodes",
                circuit,
                new String[] {"rail", "drain", "source", "current of Lt"},
                1,
                3,
                (y, dy) -> {
                    double rail = y[0], drain = y[1], source = y[2], coil = y[3];
                    double clamped = clamp(drain - rail);
                    double jfet = channel(8e-3, -2.5, 0.01, 0, drain, source);
                    double[] v = {
                        (9 - rail) / 2 - coil + clamped,
                        coil - clamped - jfet + gateCurrent(-drain),
                        jfet - source / 470 + gateCurrent(-source)
                    };
                    double[][] c = {
                        {100e-9 + 40e-12, -40e-12, 0},
                        {-40e-12, 140e-12 + gate(-drain), -100e-12},
                        {0, -100e-12, 780e-12 + gate(-source)}
                    };
                    HandLaws.solve(c, v);
                    System.arraycopy(v, 0, dy, 0, 3);
                    dy[3] = (rail - drain - resistance * coil) / 180e-6;
                });
    }

    /** The current through 10 kΩ and an antiparallel pair: u = R i(d) + d solved for d to 1e-13. */
    private static double clamp(double u) {
        double scale = 1.5 * VT, most = Math.abs(u) / 10e3 / 2e-12;
        double d = Math.signum(u) * Math.min(Math.abs(u), scale * Math.log(most + Math.sqrt(1 + most * most)));
        for (int k = 0; k < 60; k++) {
            double current = 2e-12 * Math.sinh(d / scale) + 2e-12 * d;
            double slope = 2e-12 * Math.cosh(d / scale) / scale + 2e-12;
            double step = (u - d - 10e3 * current) / (1 + 10e3 * slope);
            d += step;
            if (Math.abs(step) < 1e-13) return (u - d) / 10e3;
        }
        throw new AssertionError("the clamp's voltage was not found for " + u + " V");
    }

    /** Two transistors at one tail, the first's base on the second's collector. */
    static ReducedCircuit longTailedPair() {
        Circuit circuit = Circuit.of(
                new Battery("B", "rail", "ground", 9, 2),
                new Capacitor("Cd", "rail", "ground", 100e-9),
                Coil.ofQ("Lt", "rail", "tank", 10e-6, 50, 1e6),
                new Resistor("Rt", "rail", "tank", 390),
                new Capacitor("Ct", "tank", "ground", 2.2e-9),
                new Bipolar("Q1", Polarity.N, "rail", "tank", "tail", Circuits.npn()),
                new Bipolar("Q2", Polarity.N, "tank", "rail", "tail", Circuits.npn()),
                new Resistor("Re", "tail", "ground", 8.2e3));
        double resistance = TWO_PI_MEGA * 10e-6 / 50;
        return new ReducedCircuit(
                "long-tailed pair", circuit, new String[] {"rail", "tank", "tail", "current of Lt"}, 1, 3, (y, dy) -> {
                    double rail = y[0], tank = y[1], tail = y[2], coil = y[3];
                    Transistor q1 = Transistor.at(rail, tank, tail), q2 = Transistor.at(tank, rail, tail);
                    double across = (rail - tank) / 390, c12 = q1.ofCollector + q2.ofCollector;
                    double[] v = {
                        (9 - rail) / 2 - coil - across - q1.collector - q2.base,
                        coil + across - q1.base - q2.collector,
                        q1.base + q1.collector + q2.base + q2.collector - tail / 8.2e3
                    };
                    double[][] c = {
                        {100e-9 + c12 + q2.ofEmitter, -c12, -q2.ofEmitter},
                        {-c12, 2.2e-9 + c12 + q1.ofEmitter, -q1.ofEmitter},
                        {-q2.ofEmitter, -q1.ofEmitter, q1.ofEmitter + q2.ofEmitter}
                    };
                    HandLaws.solve(c, v);
                    System.arraycopy(v, 0, dy, 0, 3);
                    dy[3] = (rail - tank - resistance * coil) / 10e-6;
                });
    }

    /** The Hartley with poor coils and a gate leak of a microsecond. */
    static ReducedCircuit quickHartley() {
        Circuit circuit = Circuits.gateLeakHartley()
                .with(Coil.ofQ("La", "top", "tap", 90e-6, 12, 1e6))
                .with(Coil.ofQ("Lb", "tap", "ground", 6e-6, 12, 1e6))
                .with(new Resistor("Rg", "gate", "ground", 33e3));
        return hartley("Hartley that settles fast", circuit, 12, 12, 160e-12, 33e3);
    }
}
