package galena.engine.steady;

import java.util.List;

/**
 * One orbit, its frequency and an adjustment as unknowns; the phase pinned and a figure imposed: the closing system is bordered by both
 * ({@link Closing.Free#FREQUENCY_AND_PARAMETER}), so that it stays regular where the orbit as a function of the adjustment folds.
 */
final class BorderedTurning implements Turning {
    private final OrbitSystem system;
    private final Family family;
    private final OrbitFigure figure;
    private final double wanted;
    private final double low;
    private final double high;
    private final double difference;
    private final Accuracy accuracy;
    private final Watch watch;
    private final OrbitNewton newton;
    private final double[] extra = new double[Closing.MOST_FREE];
    private Orbit orbit;
    private double[] change;

    /** @param difference of the position over which the equations' change is taken */
    BorderedTurning(
            OrbitSystem system,
            Family family,
            double low,
            double high,
            double difference,
            Orbit start,
            OrbitFigure figure,
            double wanted,
            Accuracy accuracy,
            Watch watch) {
        this.system = system;
        this.family = family;
        this.low = low;
        this.high = high;
        this.difference = difference;
        this.figure = figure;
        this.wanted = wanted;
        this.accuracy = accuracy;
        this.watch = watch;
        newton = new OrbitNewton(system);
        orbit = start.copy();
        change = new double[orbit.x.length];
    }

    @Override
    public double value() {
        return figure.of(new Waveforms(system.equations(), orbit, 0));
    }

    @Override
    public double reach() {
        return figure.reach(value());
    }

    @Override
    public boolean meets(double value) {
        return figure.meets(value, wanted, accuracy);
    }

    @Override
    public double wanted() {
        return wanted;
    }

    @Override
    public String words(double value) {
        return figure.words(value);
    }

    @Override
    public double step(double position, double aim) {
        system.setEquations(family.at(position));
        double below = Math.max(low, position - difference), above = Math.min(high, position + difference);
        Change explicit = ParameterChange.between(orbit, family.at(below), family.at(above), (above - below) / 2);
        system.setParameter(explicit, Condition.figure(figure, aim - value()));
        system.newtonStep(orbit, Closing.Free.FREQUENCY_AND_PARAMETER, 0, change, extra);
        return extra[1];
    }

    @Override
    public double trusted() {
        newton.measured(orbit, change, extra[0]);
        return newton.trusted();
    }

    @Override
    public void take(double share) {
        for (int p = 0; p < change.length; p++) orbit.x[p] += share * change[p];
        orbit.frequency += share * extra[0];
    }

    @Override
    public Settled settle(double position) {
        system.setEquations(family.at(position));
        SteadyState state = new Refinement(system, Closing.Free.FREQUENCY, accuracy, watch).fromNear(orbit);
        return state instanceof SteadyState.Found found
                ? Settled.at(List.of(found), figure.of(found.waveforms()))
                : Settled.lost(((SteadyState.NotFound) state).reason());
    }

    @Override
    public void adopt(List<SteadyState.Found> states) {
        orbit = states.get(0).coarse().copy();
        change = new double[orbit.x.length];
    }
}
