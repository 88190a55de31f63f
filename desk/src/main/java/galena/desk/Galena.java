package galena.desk;

import galena.bench.capture.UnreadableCapture;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Running;
import galena.build.source.BadInputException;
import galena.build.source.Problem;
import galena.desk.command.ChannelCommand;
import galena.desk.command.CoverCommand;
import galena.desk.command.DeepenCommand;
import galena.desk.command.DemoCommand;
import galena.desk.command.DriftCommand;
import galena.desk.command.GuardCommand;
import galena.desk.command.ListenCommand;
import galena.desk.command.MeasureCommand;
import galena.desk.command.ModulateCommand;
import galena.desk.command.NewCommand;
import galena.desk.command.NoteCommand;
import galena.desk.command.OpenCommand;
import galena.desk.command.PacketCommand;
import galena.desk.command.PictureCommand;
import galena.desk.command.PredictCommand;
import galena.desk.command.ProposeCommand;
import galena.desk.command.ReachCommand;
import galena.desk.command.ReconcileCommand;
import galena.desk.command.ResponseCommand;
import galena.desk.command.SpreadCommand;
import galena.desk.command.SubstituteCommand;
import galena.desk.command.SumCommand;
import galena.desk.command.TrimCommand;
import galena.desk.command.ValueCommand;
import galena.desk.command.WindCommand;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.time.Clock;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;

/** The program: its commands, its exit codes, and what a person sees when something fails. */
@Command(
        name = "galena",
        description = "A companion for people who build small medium-wave AM transmitters.",
        synopsisSubcommandLabel = "STEP",
        commandListHeading = "%nSteps:%n",
        footerHeading = "%n",
        footer = "Help for one step: galena STEP --help")
public final class Galena implements Runnable {
    private final Terminal terminal;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it before any use
    private CommandSpec spec;

    private Galena(Terminal terminal) {
        this.terminal = terminal;
    }

    public static void main(String[] arguments) {
        int code = run(Terminal.ofProcess(), arguments);
        // After Ctrl-C the process is already on its way out, and a second exit would wait for the first.
        if (code != ExitCode.STOPPED.number()) System.exit(code);
    }

    /** Runs one command line; the number to leave the process with. */
    public static int run(Terminal terminal, String... arguments) {
        return commandLine(terminal).execute(arguments);
    }

    static CommandLine commandLine(Terminal terminal) {
        CommandLine line = new CommandLine(new Galena(terminal));
        line.addSubcommand(new NewCommand(terminal));
        line.addSubcommand(new DemoCommand(terminal));
        line.addSubcommand(new OpenCommand(terminal, Clock.system(ZoneId.systemDefault())));
        line.addSubcommand(new ProposeCommand(terminal));
        line.addSubcommand(new PredictCommand(terminal));
        line.addSubcommand(new CoverCommand(terminal));
        line.addSubcommand(new TrimCommand(terminal));
        line.addSubcommand(new ResponseCommand(terminal));
        line.addSubcommand(new ModulateCommand(terminal));
        line.addSubcommand(new DeepenCommand(terminal));
        line.addSubcommand(new GuardCommand(terminal));
        line.addSubcommand(new SpreadCommand(terminal));
        line.addSubcommand(new DriftCommand(terminal));
        line.addSubcommand(new PictureCommand(terminal));
        line.addSubcommand(new ListenCommand(terminal));
        line.addSubcommand(new WindCommand(terminal));
        line.addSubcommand(new ReachCommand(terminal));
        line.addSubcommand(new SubstituteCommand(terminal));
        line.addSubcommand(new ChannelCommand(terminal));
        line.addSubcommand(new ValueCommand(terminal));
        line.addSubcommand(new PacketCommand(terminal));
        line.addSubcommand(new MeasureCommand(terminal, Clock.system(ZoneId.systemDefault())));
        line.addSubcommand(new NoteCommand(terminal, Clock.system(ZoneId.systemDefault())));
        line.addSubcommand(new ReconcileCommand(terminal, Clock.system(ZoneId.systemDefault())));
        CommandLine sums = new CommandLine(new SumCommand(terminal));
        for (Object sum : SumCommand.sums(terminal)) sums.addSubcommand(sum);
        line.addSubcommand(sums);
        line.setParameterExceptionHandler((bad, given) -> misuse(terminal, bad));
        line.setExecutionExceptionHandler((failure, command, parsed) -> failed(terminal, failure));
        line.setExecutionStrategy(parsed -> answerOrHelp(terminal, parsed));
        line.getCommandSpec()
                .version("Galena " + version())
                .addOption(OptionSpec.builder("--version")
                        .versionHelp(true)
                        .description("Show the version and do nothing else.")
                        .build());
        everyCommand(line).forEach(command -> dress(terminal, command));
        return line;
    }

    private static Stream<CommandLine> everyCommand(CommandLine line) {
        return Stream.concat(
                Stream.of(line), line.getSubcommands().values().stream().flatMap(Galena::everyCommand));
    }

    private static void dress(Terminal terminal, CommandLine command) {
        command.setColorScheme(CommandLine.Help.defaultColorScheme(terminal.colours() ? Ansi.ON : Ansi.OFF));
        command.setUsageHelpWidth(Math.max(72, terminal.width()));
        command.setUsageHelpLongOptionsMaxWidth(24);
        CommandSpec spec = command.getCommandSpec();
        spec.usageMessage().optionListHeading("%nOptions:%n").sortOptions(false);
        if (spec.parent() == null) {
            spec.usageMessage().exitCodeListHeading("%nExit codes:%n").exitCodeList(exitCodes());
        } else {
            spec.usageMessage().parameterListHeading("%n");
        }
        spec.addOption(OptionSpec.builder("-h", "--help")
                .usageHelp(true)
                .description("Show this help and do nothing else.")
                .build());
    }

    private static Map<String, String> exitCodes() {
        Map<String, String> codes = new LinkedHashMap<>();
        for (ExitCode code : ExitCode.values()) codes.put(" " + code.number(), code.meaning());
        return codes;
    }

    @Override
    public void run() {
        terminal.print(spec.commandLine().getUsageMessage());
    }

    private static int answerOrHelp(Terminal terminal, ParseResult parsed) {
        for (CommandLine command : parsed.asCommandLineList()) {
            if (command.isUsageHelpRequested()) {
                terminal.print(command.getUsageMessage().stripTrailing());
                return ExitCode.DONE.number();
            }
            if (command.isVersionHelpRequested()) {
                terminal.print(command.getCommandSpec().version()[0]);
                return ExitCode.DONE.number();
            }
        }
        return new CommandLine.RunLast().execute(parsed);
    }

    /** What the jar says it is; a build that was not packed has no number. */
    private static String version() {
        String version = Galena.class.getPackage().getImplementationVersion();
        return version == null ? "(not packed)" : version;
    }

    private static int misuse(Terminal terminal, ParameterException bad) {
        terminal.remark("galena: " + inWords(bad));
        StringWriter nearest = new StringWriter();
        UnmatchedArgumentException.printSuggestions(bad, new PrintWriter(nearest, true));
        if (!nearest.toString().isBlank())
            terminal.remark("  " + nearest.toString().strip());
        terminal.remark(bad.getCommandLine().getCommandSpec().qualifiedName() + " --help shows what can be written");
        return ExitCode.BAD_INPUT.number();
    }

    private static String inWords(ParameterException bad) {
        if (bad instanceof MissingParameterException missing) {
            return missing.getMissing().stream().map(Galena::name).collect(Collectors.joining(" and "))
                    + (missing.getMissing().size() == 1 ? " is missing" : " are missing");
        }
        if (bad instanceof UnmatchedArgumentException unmatched && !unmatched.isUnknownOption()) {
            return "\"" + String.join(" ", unmatched.getUnmatched()) + "\" has no meaning here";
        }
        return String.valueOf(bad.getMessage());
    }

    private static String name(ArgSpec argument) {
        return argument instanceof OptionSpec option ? option.longestName() : argument.paramLabel();
    }

    static int failed(Terminal terminal, Exception failure) {
        if (failure instanceof BadInputException bad) {
            bad.problems().forEach(problem -> terminal.remark(shown(problem)));
            return ExitCode.BAD_INPUT.number();
        }
        if (failure instanceof UnreadableCapture unreadable) {
            terminal.remark(String.valueOf(unreadable.getMessage()));
            return ExitCode.BAD_INPUT.number();
        }
        if (failure instanceof NoOperatingPoint || failure instanceof Running.NotRunning) {
            terminal.remark(String.valueOf(failure.getMessage()));
            return ExitCode.NO_ANSWER.number();
        }
        if (failure instanceof CancellationException) {
            terminal.remark("stopped");
            return ExitCode.STOPPED.number();
        }
        if (failure instanceof FileSystemException disk) {
            terminal.remark(disk.getFile() + ": " + reason(disk));
            return ExitCode.BAD_INPUT.number();
        }
        terminal.remark("This is a fault in Galena, not in your build. Please report it with the lines below.");
        terminal.stack(failure);
        return ExitCode.FAULT.number();
    }

    /** An option or a folder has no lines and columns worth counting. */
    private static String shown(Problem problem) {
        String place = problem.place().toString();
        String name = problem.place().file();
        return name.endsWith(".yaml")
                ? problem.toString()
                : name + ":" + problem.toString().substring(place.length() + 1);
    }

    private static String reason(FileSystemException disk) {
        if (disk instanceof NoSuchFileException) return "there is no such file or folder";
        if (disk instanceof AccessDeniedException) return "permission denied";
        if (disk instanceof FileAlreadyExistsException) return "exists already";
        return disk.getReason() == null ? disk.toString() : disk.getReason();
    }
}
