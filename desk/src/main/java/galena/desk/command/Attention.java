package galena.desk.command;

import galena.build.predict.Progress;
import galena.desk.console.Interrupt;
import galena.desk.console.ProgressLine;
import galena.desk.console.Terminal;

/** What long work hears of the person who waits for it: shows how far it is, and stops it on Ctrl-C. */
final class Attention implements Progress, AutoCloseable {
    private final ProgressLine line;
    private final Interrupt interrupt = Interrupt.listen();

    Attention(Terminal terminal) {
        line = new ProgressLine(terminal);
    }

    @Override
    public void at(double share, String doing) {
        line.at(share, doing);
    }

    @Override
    public boolean cancelled() {
        return interrupt.getAsBoolean();
    }

    @Override
    public void close() {
        line.close();
        interrupt.close();
    }
}
