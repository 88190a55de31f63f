package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.folder.LogEntry;
import galena.desk.console.Terminal;
import java.util.List;

/** Tells what went into a bench log. */
final class Filed {
    private Filed() {}

    /** @param known readings that the log held already */
    static void tell(Terminal terminal, BuildFolder build, List<LogEntry> fresh, int known) {
        if (known > 0) terminal.remark((known == 1 ? "1 reading is" : known + " readings are") + " in the log already");
        if (fresh.isEmpty()) {
            if (known == 0) terminal.remark("nothing here is a reading that a bench log keeps");
            return;
        }
        String several = fresh.size() == 1 ? "1 reading" : fresh.size() + " readings";
        terminal.remark(several + " noted in " + Layout.LOG.in(build.folder()));
    }
}
