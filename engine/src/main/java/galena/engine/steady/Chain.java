package galena.engine.steady;

import galena.engine.equations.Equations;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Several circuits of one adjustment, each of which may also depend on the orbits of those before it: a carrier, and the same circuit
 * with its large capacitors held at the voltages that the carrier leaves on them. A figure of all orbits together can be imposed by
 * {@link Retrim#to(Chain, double, double, double, List, double)}.
 *
 * @param links the circuits, each of one structure
 * @param figure read from all orbits
 * @param reach how far the figure is led in one step
 * @param tolerance largest difference of the figure from what is wanted, in its unit
 * @param name of the figure
 */
public record Chain(
        List<Link> links, ToDoubleFunction<List<Waveforms>> figure, double reach, double tolerance, String name) {
    public Chain {
        links = List.copyOf(links);
        if (links.isEmpty()) throw new IllegalArgumentException("a chain without a link has no figure");
        if (!(reach > 0 && tolerance > 0)) throw new IllegalArgumentException("reach and tolerance are above zero");
    }

    /** A circuit by the adjustment's position and the orbits before it. */
    @FunctionalInterface
    public interface Link {
        /** @param before orbits of the links before this one, in order */
        Equations at(double position, List<Waveforms> before);
    }
}
