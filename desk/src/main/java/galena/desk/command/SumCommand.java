package galena.desk.command;

import galena.desk.console.Terminal;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code galena sum NAME}: the small sums of the bench. */
@Command(
        name = "sum",
        synopsisSubcommandLabel = "NAME",
        commandListHeading = "%nSums:%n",
        description =
                "Small sums at the bench. A reading is written with its uncertainty, as in \"987.2 kHz ± 50 Hz\" or \"100 pF"
                        + " ± 2 %%\" (+- will do); without, half of its last digit is taken.")
public final class SumCommand implements Runnable {
    private final Terminal terminal;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it before any use
    private CommandSpec spec;

    public SumCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    /** The sums, for a command line to add under this command. */
    public static Object[] sums(Terminal terminal) {
        return new Object[] {
            new AddedCapacitorSum(terminal),
            new WidthSum(terminal),
            new RingDownSum(terminal),
            new ScreenSum(terminal),
            new HumSum(terminal)
        };
    }

    @Override
    public void run() {
        terminal.print(spec.commandLine().getUsageMessage());
    }
}
