package galena.engine.equations;

import galena.engine.law.AmplifierLaw;

/** The nonlinear currents of an op-amp; its capacitor and resistances are stamped beside it. All return through the rails. */
final class AmplifierElement implements Element {
    private final AmplifierLaw law;
    private final double bias;
    /** Noninverting and inverting input, output, rails, capacitor. */
    private final int[] at;
    /** Entries by row and column in the order of {@link #at}. */
    private final int[][] entry = new int[6][6];

    private static final int PLUS_IN = 0;
    private static final int MINUS_IN = 1;
    private static final int OUT = 2;
    private static final int PLUS = 3;
    private static final int MINUS = 4;
    private static final int INSIDE = 5;

    /** @param at unknowns: noninverting, inverting, output, plus, minus, inside */
    AmplifierElement(Assembly assembly, AmplifierLaw law, double bias, int... at) {
        this.law = law;
        this.bias = bias;
        this.at = at.clone();
        join(assembly, INSIDE, MINUS, PLUS_IN, MINUS_IN, INSIDE, PLUS, MINUS);
        join(assembly, INSIDE, PLUS, INSIDE, PLUS, MINUS);
        join(assembly, OUT, PLUS, INSIDE, OUT);
        join(assembly, OUT, MINUS, INSIDE, OUT);
        join(assembly, PLUS, MINUS, PLUS, MINUS);
    }

    /** Makes entries for a current between two rows that depends on the given columns. */
    private void join(Assembly assembly, int first, int second, int... columns) {
        for (int column : columns) {
            entry[first][column] = assembly.entry(at[first], at[column]);
            entry[second][column] = assembly.entry(at[second], at[column]);
        }
    }

    @Override
    public void add(double[] x, int offset, Evaluation e) {
        double[] w = e.law;
        double inside = x[offset + at[INSIDE]], plus = x[offset + at[PLUS]], minus = x[offset + at[MINUS]];
        law.input(x[offset + at[PLUS_IN]] - x[offset + at[MINUS_IN]], w);
        flow(e, MINUS, INSIDE, w[0]);
        slope(e, MINUS, INSIDE, PLUS_IN, w[1]);
        slope(e, MINUS, INSIDE, MINUS_IN, -w[1]);
        law.stops(inside, plus, minus, w);
        stop(e, INSIDE, MINUS, w, 0);
        stop(e, PLUS, INSIDE, w, 4);
        law.output(inside - x[offset + at[OUT]], w);
        flow(e, PLUS, OUT, w[0]);
        slope(e, PLUS, OUT, INSIDE, w[1]);
        slope(e, PLUS, OUT, OUT, -w[1]);
        flow(e, OUT, MINUS, w[2]);
        slope(e, OUT, MINUS, INSIDE, w[3]);
        slope(e, OUT, MINUS, OUT, -w[3]);
        law.drawn(plus - minus, w);
        flow(e, PLUS, MINUS, w[0]);
        slope(e, PLUS, MINUS, PLUS, w[1]);
        slope(e, PLUS, MINUS, MINUS, -w[1]);
        flow(e, PLUS_IN, MINUS, bias);
        flow(e, MINUS_IN, MINUS, bias);
    }

    private void stop(Evaluation e, int from, int to, double[] w, int k) {
        flow(e, from, to, w[k]);
        slope(e, from, to, INSIDE, w[k + 1]);
        slope(e, from, to, PLUS, w[k + 2]);
        slope(e, from, to, MINUS, w[k + 3]);
    }

    private void flow(Evaluation e, int from, int to, double amperes) {
        e.i[at[from]] += amperes;
        e.i[at[to]] -= amperes;
    }

    private void slope(Evaluation e, int from, int to, int column, double siemens) {
        e.g[entry[from][column]] += siemens;
        e.g[entry[to][column]] -= siemens;
    }

    @Override
    public double power(double[] x, int offset, Evaluation e) {
        double[] w = e.law;
        double inside = x[offset + at[INSIDE]], plus = x[offset + at[PLUS]], minus = x[offset + at[MINUS]];
        double out = x[offset + at[OUT]], a = x[offset + at[PLUS_IN]], b = x[offset + at[MINUS_IN]];
        law.input(a - b, w);
        double watts = w[0] * (minus - inside);
        law.stops(inside, plus, minus, w);
        watts += w[0] * (inside - minus) + w[4] * (plus - inside);
        law.output(inside - out, w);
        watts += w[0] * (plus - out) + w[2] * (out - minus);
        law.drawn(plus - minus, w);
        return watts + w[0] * (plus - minus) + bias * (a + b - 2 * minus);
    }
}
