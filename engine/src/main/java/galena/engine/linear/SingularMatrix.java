package galena.engine.linear;

/** A matrix that has no inverse was to be factored. Solvers catch this and say what it means for the circuit. */
public final class SingularMatrix extends RuntimeException {
    private static final long serialVersionUID = 1;

    SingularMatrix(int step, int size) {
        super("no pivot at step " + (step + 1) + " of " + size);
    }
}
