package galena.desk.command;

import galena.build.folder.Layout;
import galena.build.propose.Proposal;
import galena.build.propose.Propose;
import galena.build.propose.ProposeAnswer;
import galena.build.propose.Wish;
import galena.build.reach.Surroundings;
import galena.build.reach.Window;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.build.source.Saver;
import galena.build.source.SourceFile;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.ProposeJson;
import galena.desk.writing.ProposeText;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena propose DIR}: from an intent and a drawer to a build. */
@Command(
        name = "propose",
        description =
                "Make a complete build for the intent in DIR from what its drawer holds, prove it over copies, and write it"
                        + " with a reason beside each value into a folder of its own. A build that is given is changed as little"
                        + " as it takes.")
public final class ProposeCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(
            paramLabel = "DIR",
            description =
                    "Folder with a build.yaml that holds an intent, and perhaps a supply and parts; drawer.yaml beside"
                            + " it says what is on hand.")
    private Path folder = Path.of("");

    @Option(
            names = "--pattern",
            paramLabel = "NAME",
            description = "Keep to one pattern, also where parts are given; galena new lists them.")
    private Optional<String> pattern = Optional.empty();

    @Option(names = "--seed", paramLabel = "N", description = "Of the copies drawn; 1 unless said.")
    private long seed = 1;

    @Option(names = "--count", paramLabel = "N", description = "Copies that the end is proven by; 200 unless said.")
    private int count = 200;

    @Option(
            names = "--into",
            paramLabel = "FOLDER",
            description = "Where the proposed build goes; proposed in DIR unless said. Nothing is overwritten.")
    private Optional<Path> into = Optional.empty();

    @Option(
            names = "--heard-by",
            paramLabel = "SET",
            description = "Class of set that shall hear it at the distance: rod-set, wire-fed-table-set or crystal-set;"
                    + " rod-set unless said.")
    private String set = "rod-set";

    @Option(names = "--strict", description = "Leave with 4 where the proposal does not meet the intent.")
    private boolean strict;

    @Option(names = "--json", description = "Print everything as JSON instead; the build is written all the same.")
    private boolean json;

    public ProposeCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        if (!Window.sets().contains(set))
            throw Written.bad(
                    "--heard-by",
                    "no class of set is called \"" + set + '"',
                    "Held: " + String.join(", ", Window.sets()) + ".");
        if (count < 20 || count > 100_000)
            throw Written.bad("--count", count + " copies", "A yield is proven by 20 to 100 000 copies.");
        Wish wish = Wish.open(folder);
        Path target = into.orElseGet(() -> wish.folder().resolve("proposed"));
        free(target);
        Propose.Request request = new Propose.Request(pattern, seed, count, set, Surroundings.RESIDENTIAL);
        ProposeAnswer answer;
        try (Attention attention = new Attention(terminal)) {
            answer = Propose.of(wish, request, attention);
        }
        if (answer instanceof ProposeAnswer.None none) {
            if (json) terminal.printDocument(ProposeJson.of(none));
            else ProposeText.print(none, terminal);
            return ExitCode.NO_ANSWER.number();
        }
        Proposal proposal = (Proposal) answer;
        Path file = write(wish, proposal, target);
        if (json) terminal.printDocument(ProposeJson.of(proposal, file.toString()));
        else ProposeText.print(wish.build().name(), proposal, file.toString(), terminal);
        return (strict && !proposal.meets() ? ExitCode.NOT_MET : ExitCode.DONE).number();
    }

    /** Told before the work and not after it. */
    private static void free(Path target) throws BadInputException {
        String found;
        if (Files.exists(target) && !Files.isDirectory(target)) found = "is a file";
        else if (Files.exists(Layout.BUILD.in(target))) found = "has a build.yaml already";
        else return;
        throw new BadInputException(new Problem(
                new Place(target.toString(), 1, 1),
                "",
                found,
                "A proposal never takes the place of another build.",
                "Name a folder that is free or not there yet: --into FOLDER."));
    }

    private static Path write(Wish wish, Proposal proposal, Path target) throws BadInputException, IOException {
        Path file = Layout.BUILD.in(target);
        byte[] text = proposal.text().getBytes(StandardCharsets.UTF_8);
        Saver.create(SourceFile.of(file, Layout.BUILD.place(), text));
        Path drawer = Layout.DRAWER.in(wish.folder()), copy = Layout.DRAWER.in(target);
        if (Files.exists(drawer) && !Files.exists(copy)) Files.copy(drawer, copy);
        return file;
    }
}
