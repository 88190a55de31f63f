package galena.engine.steady;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The load that holds a mode, over its whole range of amplitude: every place where it is zero is an orbit of the circuit itself.
 * Where it falls with amplitude an oscillation settles; where it rises lies the threshold that a kick must pass. Steps are short,
 * and where the curve turns back before zero its turning point is looked at, so that a narrow pair of orbits is not stepped over.
 */
final class LoadCurve {
    private static final double LARGEST_RATIO = 1.5;
    /** Past the last orbit, and this many times the supply, a stage only clips harder. */
    private static final double BEYOND = 2.5;

    private static final int MOST_LOOKS = 8;
    /** A turning point is found where the load came nearer to zero by less than this share. */
    private static final double NO_NEARER = 0.01;

    private final AmplitudeMarch march;
    private final List<Crossing> crossings = new ArrayList<>();
    private SteadyState.Reason reason = SteadyState.Reason.NONE;
    private double lastAmplitude;

    LoadCurve(AmplitudeMarch march) {
        this.march = march;
    }

    static double largestRatio() {
        return LARGEST_RATIO;
    }

    /**
     * An orbit on the curve, roughly.
     *
     * @param orbit on the mesh of the march
     * @param falls whether the load falls with amplitude there
     */
    record Crossing(Orbit orbit, boolean falls) {}

    /** Where the curve could not be followed further although there may be more, in words; empty when all is seen. */
    Optional<String> stuck() {
        if (reason == SteadyState.Reason.NONE) return Optional.empty();
        return Optional.of(new SteadyState.NotFound(
                        reason, march.now().amplitude(), march.now().load())
                .toString());
    }

    /** Every crossing, the smallest amplitude first. */
    List<Crossing> follow() {
        if (!march.begin()) {
            reason = SteadyState.Reason.NO_START;
            return crossings;
        }
        while (!march.atEnd() && !beyond()) {
            AmplitudeMarch.Station last = march.before();
            if (!march.advance()) {
                if (march.now().held() || march.small()) reason = march.stuck();
                return crossings;
            }
            if (!look(last.amplitude() > 0 ? last : null)) {
                reason = SteadyState.Reason.MARCH_STUCK;
                return crossings;
            }
        }
        if (march.now().held()) reason = march.outcome();
        return crossings;
    }

    private boolean beyond() {
        if (march.now().held() || crossings.isEmpty()) return false;
        return march.now().amplitude() > BEYOND * Math.max(march.supply(), lastAmplitude);
    }

    /** Looks at the step just taken; false when a crossing in it can't be landed on however short the step. */
    private boolean look(AmplitudeMarch.@Nullable Station last) {
        AmplitudeMarch.Station from = march.before(), to = march.now();
        if (from.held() != to.held()) return cross(from, to) || march.retreat();
        if (last != null && !march.slanted()) turn(last, from, to);
        return true;
    }

    private boolean cross(AmplitudeMarch.Station from, AmplitudeMarch.Station to) {
        Orbit landed = march.land(from, to);
        if (landed == null) return false;
        crossings.add(new Crossing(landed, from.held()));
        lastAmplitude = to.amplitude();
        return true;
    }

    /**
     * Three stations on the same side of zero, the middle one nearest to it: the turning point between them may be beyond. It is closed
     * in on by parabolas until it crosses or comes no nearer.
     */
    private void turn(AmplitudeMarch.Station from, AmplitudeMarch.Station middle, AmplitudeMarch.Station to) {
        AmplitudeMarch.Station a = from, b = middle, c = to;
        for (int k = 0; k < MOST_LOOKS && turns(a, b, c); k++) {
            AmplitudeMarch.Station top = march.at(vertex(a, b, c));
            if (top == null) return;
            double[] mesh = top.orbit().mesh;
            boolean above = top.amplitude() > b.amplitude();
            if (top.held() != b.held()) {
                AmplitudeMarch.Station low = above ? b : a, high = above ? c : b;
                if (cross(low.on(mesh), top)) cross(top, high.on(mesh));
                return;
            }
            double gained = Math.abs(b.load()) - Math.abs(top.load());
            if (Math.abs(gained) < NO_NEARER * Math.abs(b.load())) return;
            AmplitudeMarch.Station nearest = gained > 0 ? top : b, other = gained > 0 ? b : top;
            boolean otherBelow = other.amplitude() < nearest.amplitude();
            a = otherBelow ? other : a;
            c = otherBelow ? c : other;
            b = nearest;
        }
    }

    private static boolean turns(AmplitudeMarch.Station a, AmplitudeMarch.Station b, AmplitudeMarch.Station c) {
        double size = Math.abs(b.load());
        return a.held() == b.held() && size < Math.abs(a.load()) && size < Math.abs(c.load());
    }

    /** Where the parabola of load over the logarithm of amplitude through three stations has its turning point. */
    private static double vertex(AmplitudeMarch.Station a, AmplitudeMarch.Station b, AmplitudeMarch.Station c) {
        double x = Math.log(a.amplitude() / b.amplitude()), z = Math.log(c.amplitude() / b.amplitude());
        double u = (a.load() - b.load()) / x, w = (c.load() - b.load()) / z;
        double bend = (w - u) / (z - x), slope = u - bend * x;
        return b.amplitude() * Math.exp(-slope / (2 * bend));
    }
}
