package galena.engine.equations;

import galena.engine.law.JunctionLaw;

/** The charge alone of a bipolar transistor's junction; its current is in {@link TransportElement}. */
final class ChargeElement implements Element {
    private final JunctionLaw law;
    private final int sign;
    private final int a;
    private final int b;
    private final int aa;
    private final int ab;
    private final int ba;
    private final int bb;

    ChargeElement(Assembly assembly, JunctionLaw law, int sign, int a, int b) {
        this.law = law;
        this.sign = sign;
        this.a = a;
        this.b = b;
        aa = assembly.entry(a, a);
        ab = assembly.entry(a, b);
        ba = assembly.entry(b, a);
        bb = assembly.entry(b, b);
    }

    @Override
    public void add(double[] x, int offset, Evaluation e) {
        double[] w = e.law;
        law.evaluate(sign * (x[offset + a] - x[offset + b]), w, 0);
        double charge = sign * w[2], capacitance = w[3];
        e.q[a] += charge;
        e.q[b] -= charge;
        e.c[aa] += capacitance;
        e.c[ab] -= capacitance;
        e.c[ba] -= capacitance;
        e.c[bb] += capacitance;
    }

    @Override
    public double power(double[] x, int offset, Evaluation e) {
        return 0;
    }
}
