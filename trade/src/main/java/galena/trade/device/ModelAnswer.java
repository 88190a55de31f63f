package galena.trade.device;

/** Model parameters, or why they can't be had. */
public sealed interface ModelAnswer<M> permits Derived, NotDerivable {
    /** The model, or an exception that says what is missing: for callers that have checked before. */
    M orElseThrow();
}
