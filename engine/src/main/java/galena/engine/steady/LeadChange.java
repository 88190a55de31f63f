package galena.engine.steady;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.equations.Evaluation;
import galena.engine.part.Part;

/**
 * How an inductance ℓ in one lead of a part enters the equations, to first order: the part sees the net's voltage less ℓ dI/dt, I
 * being what flows into that pin, so its currents and charges change by −dI/dt times their derivatives by that voltage, a henry.
 * I and its rate are those of the collocation's own cubics. A pin at ground is moved by moving all others the other way. The
 * inductance itself is not put into the circuit: with a few picofarads it would ring far above what a carrier's mesh can follow,
 * and the carrier hardly hears that.
 */
final class LeadChange {
    private final Orbit orbit;
    private final Equations alone;
    private final int pin;
    private final int[] place;

    /** @throws IllegalArgumentException when the part is not joined to the net */
    LeadChange(Orbit orbit, Equations whole, Part part, String net) {
        if (!part.nets().contains(net)) throw new IllegalArgumentException(part.name() + " is not joined to " + net);
        this.orbit = orbit;
        alone = Equations.of(Circuit.of(part).atTemperature(whole.circuit().temperature()));
        pin = alone.net(net);
        place = new int[alone.stride()];
        for (int j = 1; j < place.length; j++)
            place[j] = whole.unknown(alone.name(j)).orElseThrow();
    }

    Change change() {
        double[] into = new double[orbit.points()], charge = new double[orbit.points()];
        Evaluation work = alone.newEvaluation();
        double[] x = new double[alone.stride()];
        for (int p = 0; p < orbit.points(); p++) {
            evaluate(p, x, work);
            into[p] = atPin(work.i);
            charge[p] = atPin(work.q);
        }
        double[] displaced = rate(charge);
        for (int p = 0; p < into.length; p++) into[p] += displaced[p];
        double[] rising = rate(into);
        Change change = new Change(new double[orbit.x.length], new double[orbit.x.length]);
        for (int p = 0; p < orbit.points(); p++) {
            evaluate(p, x, work);
            for (int e = 1; e < alone.pattern().entries(); e++) {
                double moved = moves(alone.pattern().column(e)) * -rising[p];
                int to = p * orbit.stride + place[alone.pattern().row(e)];
                change.current()[to] += moved * work.g[e];
                change.charge()[to] += moved * work.c[e];
            }
        }
        return change;
    }

    private void evaluate(int point, double[] x, Evaluation work) {
        for (int j = 1; j < x.length; j++) x[j] = orbit.x[point * orbit.stride + place[j]];
        alone.evaluate(x, 0, work);
    }

    /** What enters at the pin: its row, or at ground what leaves by all the others. */
    private double atPin(double[] rows) {
        if (pin > 0) return rows[pin];
        double sum = 0;
        for (int j = 1; j <= alone.nets(); j++) sum -= rows[j];
        return sum;
    }

    /** How much a voltage moves when the pin's does by one, from the part's own point of view. */
    private int moves(int unknown) {
        if (pin > 0) return unknown == pin ? 1 : 0;
        return alone.isCurrent(unknown) ? 0 : -1;
    }

    /** Per second, at the stages. */
    private double[] rate(double[] values) {
        double[] rate = new double[values.length];
        for (int k = 0; k < orbit.intervals(); k++) {
            double perWidth = orbit.frequency / orbit.width(k);
            double start = values[orbit.start(k) / orbit.stride];
            for (int i = 0; i < Radau.STAGES; i++) {
                double sum = 0;
                for (int j = 0; j < Radau.STAGES; j++) {
                    sum += Radau.INVERSE[Radau.STAGES * i + j] * (values[Radau.STAGES * k + j] - start);
                }
                rate[Radau.STAGES * k + i] = perWidth * sum;
            }
        }
        return rate;
    }
}
