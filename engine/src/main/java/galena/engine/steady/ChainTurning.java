package galena.engine.steady;

import galena.engine.equations.Equations;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The orbits of a {@link Chain} and an adjustment as one system of unknowns, the chain's figure imposed. Its matrix is triangular by
 * blocks but for the column of the adjustment and the row of the figure. So each orbit's part is solved for two right-hand sides in
 * turn, what it lacks and how the adjustment moves it, both with what the orbits before it move; the figure's row then gives the
 * adjustment's step (bordering by blocks). All unknowns step together: quadratic near the solution.
 */
final class ChainTurning implements Turning {
    /** Of a step, for differences along it. */
    private static final double PART = 1e-3;

    private final Chain chain;
    private final double wanted;
    private final double low;
    private final double high;
    private final double difference;
    private final Accuracy accuracy;
    private final Watch watch;
    private final List<Member> members = new ArrayList<>();
    private double taken;

    /** One link's orbit, what it lacks, and its slope by the adjustment. */
    private static final class Member {
        private final OrbitSystem system;
        private final OrbitNewton newton;
        private Orbit orbit;
        private Orbit lacks;
        private Orbit slope;

        Member(SteadyState.Found known) {
            system = new OrbitSystem(known.waveforms().equations(), known.site());
            newton = new OrbitNewton(system);
            orbit = known.coarse().copy();
            lacks = blank();
            slope = blank();
        }

        void adopt(SteadyState.Found state) {
            orbit = state.coarse().copy();
            lacks = blank();
            slope = blank();
        }

        private Orbit blank() {
            return new Orbit(orbit.mesh, orbit.stride, 0);
        }

        Waveforms waveforms(double shareOfLacks, double shareOfSlope) {
            Orbit moved = orbit.copy();
            moved.add(shareOfLacks, lacks);
            moved.add(shareOfSlope, slope);
            return new Waveforms(system.equations(), moved, 0);
        }
    }

    ChainTurning(
            Chain chain,
            double low,
            double high,
            double difference,
            List<SteadyState.Found> known,
            double wanted,
            Accuracy accuracy,
            Watch watch) {
        this.chain = chain;
        this.low = low;
        this.high = high;
        this.difference = difference;
        this.wanted = wanted;
        this.accuracy = accuracy;
        this.watch = watch;
        for (SteadyState.Found state : known) members.add(new Member(state));
    }

    @Override
    public double value() {
        return along(members.size(), 0, 0);
    }

    @Override
    public double reach() {
        return chain.reach();
    }

    @Override
    public boolean meets(double value) {
        return Math.abs(value - wanted) <= chain.tolerance();
    }

    @Override
    public double wanted() {
        return wanted;
    }

    @Override
    public String words(double value) {
        return String.format(Locale.ROOT, "%s is %.4g", chain.name(), value);
    }

    private List<Waveforms> moved(int count, double shareOfLacks, double shareOfSlope) {
        return members.stream()
                .limit(count)
                .map(m -> m.waveforms(shareOfLacks, shareOfSlope))
                .toList();
    }

    private double along(int count, double shareOfLacks, double shareOfSlope) {
        return chain.figure().applyAsDouble(moved(count, shareOfLacks, shareOfSlope));
    }

    @Override
    public double step(double position, double aim) {
        for (int k = 0; k < members.size(); k++) linearise(k, position);
        int all = members.size();
        double value = along(all, 0, 0);
        double byLacks = (along(all, PART, 0) - along(all, -PART, 0)) / (2 * PART);
        double bySlope = (along(all, 0, difference) - along(all, 0, -difference)) / (2 * difference);
        taken = (aim - value - byLacks) / bySlope;
        return taken;
    }

    private void linearise(int k, double position) {
        Member member = members.get(k);
        Chain.Link link = chain.links().get(k);
        double[] extra = new double[Closing.MOST_FREE];
        member.system.setEquations(link.at(position, moved(k, 0, 0)));
        member.system.newtonStep(member.orbit, Closing.Free.FREQUENCY, 0, member.lacks.x, extra);
        member.lacks.frequency = extra[0];
        if (k > 0) {
            Orbit pushed =
                    response(member, link.at(position, moved(k, -PART, 0)), link.at(position, moved(k, PART, 0)), PART);
            member.lacks.add(1, pushed);
        }
        double below = Math.max(low, position - difference), above = Math.min(high, position + difference);
        member.slope = response(
                member,
                link.at(below, moved(k, 0, below - position)),
                link.at(above, moved(k, 0, above - position)),
                (above - below) / 2);
    }

    /** How an orbit answers a change of its equations. */
    private static Orbit response(Member member, Equations below, Equations above, double delta) {
        Orbit answer = member.blank();
        double[] extra = new double[Closing.MOST_FREE];
        Change change = ParameterChange.between(member.orbit, below, above, delta);
        member.system.differentiate(member.orbit, change, Closing.Free.FREQUENCY, answer.x, extra);
        answer.frequency = extra[0];
        return answer;
    }

    @Override
    public double trusted() {
        double share = 1;
        for (Member member : members) {
            Orbit step = member.lacks.copy();
            step.add(taken, member.slope);
            member.newton.measured(member.orbit, step.x, step.frequency);
            share = Math.min(share, member.newton.trusted());
        }
        return share;
    }

    @Override
    public void take(double share) {
        for (Member member : members) {
            member.orbit.add(share, member.lacks);
            member.orbit.add(share * taken, member.slope);
        }
    }

    @Override
    public Settled settle(double position) {
        List<SteadyState.Found> states = new ArrayList<>();
        List<Waveforms> before = new ArrayList<>();
        for (int k = 0; k < members.size(); k++) {
            Member member = members.get(k);
            member.system.setEquations(chain.links().get(k).at(position, List.copyOf(before)));
            SteadyState state =
                    new Refinement(member.system, Closing.Free.FREQUENCY, accuracy, watch).fromNear(member.orbit);
            if (!(state instanceof SteadyState.Found found)) {
                return Settled.lost(((SteadyState.NotFound) state).reason());
            }
            states.add(found);
            before.add(found.waveforms());
        }
        return Settled.at(states, chain.figure().applyAsDouble(before));
    }

    @Override
    public void adopt(List<SteadyState.Found> states) {
        for (int k = 0; k < members.size(); k++) members.get(k).adopt(states.get(k));
    }
}
