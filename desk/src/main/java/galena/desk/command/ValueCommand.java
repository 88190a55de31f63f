package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.folder.Drawer;
import galena.build.preferred.Component;
import galena.build.preferred.Marking;
import galena.build.preferred.ValueSheet;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.ValueJson;
import galena.desk.writing.ValueText;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena value}: from a reckoned value to parts, and from what is printed on a part to its value. */
@Command(
        name = "value",
        description =
                "Find the preferred value nearest to a reckoned one, how such a part is marked, and what two parts of a"
                        + " drawer make; or read what is printed on a part.")
public final class ValueCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(
            arity = "0..1",
            paramLabel = "VALUE",
            description = "The value wanted, as 4.83k, 470R, 117 pF or 180 µH.")
    private Optional<String> value = Optional.empty();

    @Option(
            names = "--drawer",
            paramLabel = "DIR",
            description = "Also look for one or two parts in the drawer.yaml of this build's folder.")
    private Optional<Path> drawer = Optional.empty();

    @Option(
            names = "--most",
            paramLabel = "N",
            description = "How many ways out of the drawer, 1 to 100; 8 unless said.")
    private int most = 8;

    @Option(
            names = "--marking",
            paramLabel = "CODE",
            description = "Read letters and digits on a part instead, as in --marking 4n7, 472, 104K or 4K7J.")
    private Optional<String> marking = Optional.empty();

    @Option(
            names = "--bands",
            paramLabel = "COLOURS",
            description = "Read a resistor's bands instead, as in --bands \"yellow violet red gold\".")
    private Optional<String> bands = Optional.empty();

    @Option(
            names = "--part",
            paramLabel = "KIND",
            description = "What kind of part it is, where the unit doesn't tell: resistor, capacitor or coil.")
    private Optional<String> part = Optional.empty();

    @Option(names = "--json", description = "Print it as JSON instead.")
    private boolean json;

    public ValueCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        Asked asked = new Asked();
        if (Stream.of(value, marking, bands).filter(Optional::isPresent).count() != 1)
            asked.wrong("VALUE", "one thing is asked at a time", "Give a value, or --marking, or --bands.");
        Optional<Component> kind = part.flatMap(Component::named);
        if (part.isPresent() && kind.isEmpty())
            asked.wrong(
                    "--part",
                    "no part is called \"" + part.get() + '"',
                    "Known: " + String.join(", ", Component.words()) + ".");
        if (most < 1 || most > 100) asked.wrong("--most", most + " ways", "Between 1 and 100 are printed.");
        asked.done();
        if (value.isPresent()) sheet(ValueSheet.of(Component.read(value.get(), kind), drawer(), most));
        else show(bands.isPresent() ? Marking.bands(bands.get()) : Marking.read(marking.orElseThrow(), kind));
        return ExitCode.DONE.number();
    }

    private Optional<Drawer> drawer() throws Exception {
        return drawer.isEmpty()
                ? Optional.empty()
                : Optional.of(BuildFolder.open(drawer.get()).drawer());
    }

    private void sheet(ValueSheet sheet) {
        if (json) terminal.printDocument(ValueJson.of(sheet));
        else ValueText.print(sheet, drawer.isPresent(), terminal);
    }

    private void show(Marking read) {
        if (json) terminal.printDocument(ValueJson.of(read));
        else ValueText.print(read, terminal);
    }
}
