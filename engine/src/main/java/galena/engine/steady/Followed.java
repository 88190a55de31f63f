package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.startup.Site;
import java.util.Optional;

/**
 * A period solved on a mesh that was laid for a neighbour, its mesh error not measured: a point of a curve whose ends are solved in
 * full, or a start for another solve. Immutable.
 */
public final class Followed {
    private final Equations equations;
    private final Orbit orbit;
    private final Site site;

    Followed(Equations equations, Orbit orbit, Site site) {
        this.equations = equations;
        this.orbit = orbit;
        this.site = site;
    }

    /** A steady state on the coarser of its two meshes. */
    public static Followed of(SteadyState.Found found) {
        return new Followed(found.waveforms().equations(), found.coarse(), found.site());
    }

    /** A steady state on the finer of its two meshes. */
    public static Followed finer(SteadyState.Found found) {
        return new Followed(found.waveforms().equations(), found.waveforms().orbit(), found.site());
    }

    /** On this mesh; free-running. */
    public Waveforms waveforms() {
        return new Waveforms(equations, orbit, 0);
    }

    Orbit orbit() {
        return orbit;
    }

    /** Where its phase is pinned. */
    public Site site() {
        return site;
    }

    /**
     * The same values laid on another circuit's unknowns of the same names, zero on those that this one lacks: a start, no solution.
     * Currents of sources put in place of capacitors enter linearly, so Newton's first step sets them right.
     *
     * @throws IllegalArgumentException when the other circuit lacks the coil or net at which the phase is pinned
     */
    public Followed carriedTo(Equations other) {
        Orbit carried = new Orbit(orbit.mesh, other.stride(), orbit.frequency);
        for (int to = 1; to < other.stride(); to++) {
            int from = equations.unknown(other.name(to)).orElse(0);
            for (int p = 0; p < orbit.points(); p++)
                carried.x[p * other.stride() + to] = orbit.x[p * orbit.stride + from];
        }
        Site there = new Site(site.part(), other.net(equations.name(site.a())), other.net(equations.name(site.b())));
        return new Followed(other, carried, there);
    }

    /**
     * The start that a parabola through this period gives: its slope by a parameter, and another period some way along.
     *
     * @param slope by the parameter, per unit; of this period
     * @param known a period at which the parameter is {@code way} further
     * @param way the parameter's distance from this period to the known one
     * @param distance to where a start is wanted
     */
    Followed ahead(Slope slope, Optional<Followed> known, double way, double distance) {
        Orbit ahead = orbit.copy();
        double square = known.isPresent() ? distance / way * (distance / way) : 0;
        for (int p = 0; p < ahead.x.length; p++) {
            double straight = slope.orbit.x[p];
            ahead.x[p] += distance * straight;
            if (known.isPresent()) ahead.x[p] += square * (known.get().orbit.x[p] - orbit.x[p] - way * straight);
        }
        ahead.frequency += distance * slope.orbit.frequency;
        if (known.isPresent()) {
            ahead.frequency += square * (known.get().orbit.frequency - orbit.frequency - way * slope.orbit.frequency);
        }
        return new Followed(equations, ahead, site);
    }

    /** How a period changes with a parameter, per unit. */
    public static final class Slope {
        private final Orbit orbit;
        private final OrbitDerivatives.Derivative figures;

        Slope(Waveforms at, Waveforms change, Orbit orbit) {
            this.orbit = orbit;
            figures = new OrbitDerivatives.Derivative(at, change);
        }

        /** Of the figures. */
        public OrbitDerivatives.Derivative figures() {
            return figures;
        }
    }
}
