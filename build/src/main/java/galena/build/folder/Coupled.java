package galena.build.folder;

import galena.build.quantity.Quantity;

/**
 * Two coils that share flux.
 *
 * @param first a coil
 * @param second another coil
 * @param k above zero if the first pins of both are the like ends
 */
public record Coupled(String first, String second, Quantity k) {
    /** Whether this joins the same two coils. */
    public boolean joins(String one, String other) {
        return (first.equals(one) && second.equals(other)) || (first.equals(other) && second.equals(one));
    }
}
