package galena.engine.steady;

import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;

/** Tells a long computation to stop. Asked between Newton steps, a few milliseconds apart at most. */
public final class Watch {
    /** Never stops. */
    public static final Watch NONE = new Watch(() -> false);

    private final BooleanSupplier stop;

    public Watch(BooleanSupplier stop) {
        this.stop = stop;
    }

    /** @throws CancellationException when the computation is to stop */
    public void check() {
        if (stop.getAsBoolean()) throw new CancellationException("stopped on request");
    }
}
