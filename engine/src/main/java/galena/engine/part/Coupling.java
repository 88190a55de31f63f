package galena.engine.part;

import java.util.List;

/**
 * Mutual inductance M = k · √(L₁L₂) between two coils. With k above zero, the first pins of both coils are the like ends.
 *
 * @param first name of a coil
 * @param second name of another coil
 * @param k −1 to 1, ends excluded
 */
public record Coupling(String name, String first, String second, double k) implements Part {
    public Coupling {
        Require.named(name);
        if (!(Math.abs(k) < 1)) {
            throw new IllegalArgumentException(name + ": k " + k + " between " + first + " and " + second
                    + " must lie between -1 and 1: no two windings share all flux");
        }
        if (first.equals(second)) throw new IllegalArgumentException(name + ": couples " + first + " with itself");
    }

    /** The same with k times a factor. */
    public Coupling scaled(double factor) {
        return new Coupling(name, first, second, k * factor);
    }

    /** Empty: a coupling joins coils, not nets. */
    @Override
    public List<String> nets() {
        return List.of();
    }

    @Override
    public List<String> pins() {
        return List.of();
    }
}
