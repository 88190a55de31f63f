package galena.engine.equations;

import galena.engine.law.ChannelLaw;

/** A square-law channel from drain to source under a gate, with the device's sign. */
final class ChannelElement implements Element {
    private final ChannelLaw law;
    private final int sign;
    private final int d;
    private final int g;
    private final int s;
    private final int dg;
    private final int dd;
    private final int ds;
    private final int sg;
    private final int sd;
    private final int ss;

    ChannelElement(Assembly assembly, ChannelLaw law, int sign, int d, int g, int s) {
        this.law = law;
        this.sign = sign;
        this.d = d;
        this.g = g;
        this.s = s;
        dg = assembly.entry(d, g);
        dd = assembly.entry(d, d);
        ds = assembly.entry(d, s);
        sg = assembly.entry(s, g);
        sd = assembly.entry(s, d);
        ss = assembly.entry(s, s);
    }

    @Override
    public void add(double[] x, int offset, Evaluation e) {
        double[] w = e.law;
        double vs = x[offset + s];
        law.evaluate(sign * (x[offset + g] - vs), sign * (x[offset + d] - vs), w, 0);
        double current = sign * w[0], gm = w[1], gds = w[2];
        e.i[d] += current;
        e.i[s] -= current;
        e.g[dg] += gm;
        e.g[dd] += gds;
        e.g[ds] -= gm + gds;
        e.g[sg] -= gm;
        e.g[sd] -= gds;
        e.g[ss] += gm + gds;
    }

    @Override
    public int bends() {
        return 2;
    }

    @Override
    public void bends(double[] x, int offset, double[] out, int at) {
        double vg = x[offset + g];
        out[at] = sign * (vg - x[offset + s]) - law.threshold();
        out[at + 1] = sign * (vg - x[offset + d]) - law.threshold();
    }

    @Override
    public double power(double[] x, int offset, Evaluation e) {
        double vs = x[offset + s], vds = sign * (x[offset + d] - vs);
        law.evaluate(sign * (x[offset + g] - vs), vds, e.law, 0);
        return vds * e.law[0];
    }
}
