package galena.engine.equations;

import galena.engine.law.TransportLaw;

/** The transport and base currents of a bipolar transistor; its charges and leakages are two {@link JunctionElement}s' matter. */
final class TransportElement implements Element {
    private final TransportLaw law;
    private final int sign;
    private final int c;
    private final int b;
    private final int e;
    private final int cc;
    private final int cb;
    private final int ce;
    private final int bc;
    private final int bb;
    private final int be;
    private final int ec;
    private final int eb;
    private final int ee;
    private final int tangents;

    TransportElement(Assembly assembly, TransportLaw law, int sign, int c, int b, int e) {
        this.law = law;
        this.sign = sign;
        this.c = c;
        this.b = b;
        this.e = e;
        cc = assembly.entry(c, c);
        cb = assembly.entry(c, b);
        ce = assembly.entry(c, e);
        bc = assembly.entry(b, c);
        bb = assembly.entry(b, b);
        be = assembly.entry(b, e);
        ec = assembly.entry(e, c);
        eb = assembly.entry(e, b);
        ee = assembly.entry(e, e);
        tangents = assembly.junctions;
        assembly.junctions += 2;
    }

    @Override
    public void add(double[] x, int offset, Evaluation out) {
        double[] w = out.law;
        double vbe = sign * (x[offset + b] - x[offset + e]), vbc = sign * (x[offset + b] - x[offset + c]);
        if (out.tangents.length == 0) {
            law.evaluate(vbe, vbc, w, 0);
        } else {
            double atBe = out.tangents[out.tangentAt + tangents], atBc = out.tangents[out.tangentAt + tangents + 1];
            law.evaluate(atBe, atBc, w, 0);
            w[0] += w[1] * (vbe - atBe) + w[2] * (vbc - atBc);
            w[3] += w[4] * (vbe - atBe);
            w[5] += w[6] * (vbc - atBc);
        }
        double transport = w[0], byBe = w[1], byBc = w[2], baseE = w[3], gBaseE = w[4], baseC = w[5], gBaseC = w[6];
        double collector = sign * (transport - baseC), base = sign * (baseE + baseC);
        out.i[c] += collector;
        out.i[b] += base;
        out.i[e] -= collector + base;
        // v_be = vb − ve, v_bc = vb − vc
        double cByBc = byBc - gBaseC;
        double[] g = out.g;
        g[cb] += byBe + cByBc;
        g[ce] -= byBe;
        g[cc] -= cByBc;
        g[bb] += gBaseE + gBaseC;
        g[be] -= gBaseE;
        g[bc] -= gBaseC;
        g[eb] -= byBe + byBc + gBaseE;
        g[ee] += byBe + gBaseE;
        g[ec] += byBc;
    }

    @Override
    public double lead(double[] x, int offset, double[] led, int at) {
        double vbe = sign * (x[offset + b] - x[offset + e]), vbc = sign * (x[offset + b] - x[offset + c]);
        int place = at + tangents;
        led[place] = law.led(led[place], vbe);
        led[place + 1] = law.led(led[place + 1], vbc);
        return Math.max(Math.abs(vbe - led[place]), Math.abs(vbc - led[place + 1])) / law.width();
    }

    @Override
    public double power(double[] x, int offset, Evaluation out) {
        double vbe = sign * (x[offset + b] - x[offset + e]), vbc = sign * (x[offset + b] - x[offset + c]);
        law.evaluate(vbe, vbc, out.law, 0);
        double[] w = out.law;
        return w[0] * (vbe - vbc) + w[3] * vbe + w[5] * vbc;
    }
}
