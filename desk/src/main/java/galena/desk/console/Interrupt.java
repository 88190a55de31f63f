package galena.desk.console;

import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;

/**
 * Turns Ctrl-C into a polite stop. While one is open, an interrupt raises a flag that long work asks, and the process then waits a
 * moment for that work to put its files in order. {@link #close} returns to the plain behaviour.
 */
public final class Interrupt implements BooleanSupplier, AutoCloseable {
    private static final long PATIENCE_MILLISECONDS = 500;

    private final AtomicBoolean raised = new AtomicBoolean();
    private final Thread worker = Thread.currentThread();
    private final Thread hook = new Thread(this::stop, "stop on Ctrl-C");

    private Interrupt() {}

    /** Listens from now on; the calling thread is the one waited for. */
    public static Interrupt listen() {
        Interrupt interrupt = new Interrupt();
        Runtime.getRuntime().addShutdownHook(interrupt.hook);
        return interrupt;
    }

    private void stop() {
        raised.set(true);
        try {
            worker.join(PATIENCE_MILLISECONDS);
        } catch (InterruptedException enough) {
            Thread.currentThread().interrupt();
        }
    }

    /** Whether work is to stop. */
    @Override
    public boolean getAsBoolean() {
        return raised.get();
    }

    @Override
    public void close() {
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException alreadyStopping) {
            // The hook is what called us to stop; there is nothing to take back.
        }
    }
}
