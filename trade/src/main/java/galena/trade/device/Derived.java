package galena.trade.device;

import galena.trade.source.Basis;
import java.util.List;

/**
 * Model parameters with the way they were found.
 *
 * @param model plain numbers in SI
 * @param steps one for each parameter
 */
public record Derived<M>(M model, List<Step> steps) implements ModelAnswer<M> {
    public Derived {
        steps = List.copyOf(steps);
    }

    /** The weakest basis of all steps. */
    public Basis basis() {
        return Basis.weakest(steps.stream().map(Step::basis).toList());
    }

    @Override
    public M orElseThrow() {
        return model;
    }
}
