package galena.engine.equations;

import galena.engine.law.JunctionLaw;

/**
 * A junction between two nets, its voltage taken with the device's sign. A bipolar transistor's junctions bring their charge alone:
 * their currents are {@link TransportElement}'s.
 */
final class JunctionElement implements Element {
    private final JunctionLaw law;
    private final int sign;
    private final boolean conducts;
    private final int a;
    private final int b;
    private final int aa;
    private final int ab;
    private final int ba;
    private final int bb;
    private final int tangent;

    JunctionElement(Assembly assembly, JunctionLaw law, int sign, int a, int b, boolean conducts) {
        this.law = law;
        this.sign = sign;
        this.conducts = conducts;
        this.a = a;
        this.b = b;
        aa = assembly.entry(a, a);
        ab = assembly.entry(a, b);
        ba = assembly.entry(b, a);
        bb = assembly.entry(b, b);
        tangent = assembly.junctions++;
    }

    @Override
    public void add(double[] x, int offset, Evaluation e) {
        double[] w = e.law;
        double v = voltage(x, offset), at = e.tangents.length == 0 ? v : e.tangents[e.tangentAt + tangent];
        law.evaluate(at, w, 0);
        w[0] += w[1] * (v - at);
        w[2] += w[3] * (v - at);
        double charge = sign * w[2], capacitance = w[3];
        e.q[a] += charge;
        e.q[b] -= charge;
        e.c[aa] += capacitance;
        e.c[ab] -= capacitance;
        e.c[ba] -= capacitance;
        e.c[bb] += capacitance;
        if (conducts) addConduction(sign * w[0], w[1], e);
    }

    private double voltage(double[] x, int offset) {
        return sign * (x[offset + a] - x[offset + b]);
    }

    @Override
    public double lead(double[] x, int offset, double[] tangents, int at) {
        double v = voltage(x, offset), led = law.led(tangents[at + tangent], v);
        tangents[at + tangent] = led;
        return Math.abs(v - led) / law.width();
    }

    private void addConduction(double current, double conductance, Evaluation e) {
        e.i[a] += current;
        e.i[b] -= current;
        e.g[aa] += conductance;
        e.g[ab] -= conductance;
        e.g[ba] -= conductance;
        e.g[bb] += conductance;
    }

    @Override
    public double power(double[] x, int offset, Evaluation e) {
        if (!conducts) return 0;
        double v = voltage(x, offset);
        law.evaluate(v, e.law, 0);
        return v * e.law[0];
    }
}
