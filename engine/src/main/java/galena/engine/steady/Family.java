package galena.engine.steady;

import galena.engine.equations.Equations;

/** A circuit as a function of one parameter: a trimmer's position, a preset's, a resistance. All of one structure. */
@FunctionalInterface
public interface Family {
    /** The equations at a value of the parameter. */
    Equations at(double parameter);
}
