package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.folder.Settings;
import galena.build.predict.Trim;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Edit;
import galena.build.source.Node;
import galena.build.source.Problems;
import galena.build.source.YamlReader;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.TrimJson;
import galena.desk.writing.TrimText;
import galena.engine.steady.Accuracy;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena trim DIR PART}: where an adjustment has to stand for a wanted carrier, depth, voltage or current. */
@Command(
        name = "trim",
        description = "Find where one adjustment has to stand for a wanted carrier, modulation, voltage or current."
                + " Writes nothing unless told to.")
public final class TrimCommand implements Callable<Integer> {
    private static final String ONE_WISH =
            "Ask for one of --carrier 999kHz, --modulation 80%, --voltage Lt=8V, --current La=2mA.";

    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "DIR", description = "The build's folder, or its build.yaml.")
    private Path folder = Path.of("");

    @Parameters(
            index = "1",
            paramLabel = "PART",
            description = "The adjustment: a trimmer, a preset or a coil with a slug.")
    private String part = "";

    @Option(names = "--carrier", paramLabel = "F", description = "The carrier wanted, as in --carrier 999kHz.")
    private Optional<String> carrier = Optional.empty();

    @Option(
            names = "--modulation",
            paramLabel = "DEPTH",
            description =
                    "The negative peak wanted at the audio's level, as in --modulation 80%%: on the static curve, at"
                            + " which large capacitors hold their charge.")
    private Optional<String> modulation = Optional.empty();

    @Option(
            names = "--voltage",
            paramLabel = "WHERE=V",
            description = "The carrier's peak voltage wanted across a coil, or at a net against ground, as in --voltage"
                    + " Lt=8V.")
    private Optional<String> voltage = Optional.empty();

    @Option(
            names = "--current",
            paramLabel = "COIL=A",
            description = "The carrier's peak current wanted in a coil, as in --current La=2mA.")
    private Optional<String> current = Optional.empty();

    @Mixin
    private Conditions conditions = new Conditions();

    @Option(
            names = "--write",
            description = "Write the position found behind set: of the part in build.yaml. Nothing else there changes.")
    private boolean write;

    @Option(names = "--json", description = "Print it as JSON instead.")
    private boolean json;

    public TrimCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        Trim.Wanted wanted = wanted();
        BuildFolder build = BuildFolder.open(folder);
        // The name is checked by setting it where it stands: the same message as for --set.
        Settings.apply(build.build(), Overlay.NONE, "PART", List.of(part + "=50%"));
        Overlay overlay = conditions.over(build);
        Trim.Answer answer;
        try (Attention attention = new Attention(terminal)) {
            answer = Trim.of(build.build(), overlay, part, wanted, Accuracy.CERTIFIED, attention);
        } catch (Trim.NotThere missing) {
            throw Written.bad(option(), String.valueOf(missing.getMessage()), ONE_WISH);
        }
        if (json) terminal.printDocument(TrimJson.of(answer));
        else TrimText.print(answer, terminal);
        if (answer.end() != Trim.End.MET) return ExitCode.NO_ANSWER.number();
        if (write) write(build, answer.position().orElseThrow());
        return ExitCode.DONE.number();
    }

    private Trim.Wanted wanted() throws BadInputException {
        if (Stream.of(carrier, modulation, voltage, current)
                        .filter(Optional::isPresent)
                        .count()
                != 1) throw Written.bad("trim", "one thing is wanted at a time", ONE_WISH);
        if (carrier.isPresent()) return new Trim.Carrier(Written.positive("--carrier", carrier.get(), Unit.HERTZ));
        if (modulation.isPresent()) {
            Quantity depth = Written.quantity("--modulation", modulation.get(), Unit.FRACTION);
            if (depth.value() > 0 && depth.value() < 1) return new Trim.Depth(depth.value());
            throw Written.bad(
                    "--modulation",
                    '"' + modulation.get() + "\" is no depth of a carrier that goes on",
                    "A depth lies between 0 % and 100 %.");
        }
        if (voltage.isPresent()) {
            String[] pair = pair("--voltage", voltage.get(), "Lt=8V");
            return new Trim.Voltage(pair[0], Written.positive("--voltage", pair[1], Unit.VOLT));
        }
        String[] pair = pair("--current", current.orElseThrow(), "La=2mA");
        return new Trim.Current(pair[0], Written.positive("--current", pair[1], Unit.AMPERE));
    }

    private static String[] pair(String option, String text, String example) throws BadInputException {
        int equals = text.indexOf('=');
        if (equals < 1) throw Written.bad(option, '"' + text + "\" names no place", "Written as " + example + ".");
        return new String[] {text.substring(0, equals).strip(), text.substring(equals + 1)};
    }

    private String option() {
        return modulation.isPresent() ? "--modulation" : voltage.isPresent() ? "--voltage" : "--current";
    }

    private void write(BuildFolder build, double position) throws BadInputException, IOException {
        String path = "parts." + part + ".set";
        String text = String.format(Locale.ROOT, "%.2f %%", 100 * position);
        Problems problems = new Problems();
        Node.Mapping top = YamlReader.read(build.build().file(), problems);
        problems.throwIfAny();
        Optional<String> before =
                top.find(path).filter(Node.Scalar.class::isInstance).map(n -> ((Node.Scalar) n).text());
        if (before.isPresent() && before.get().equals(text)) return;
        build.edit(new Edit(path, before, Optional.of(text)));
        terminal.remark("build.yaml: " + part + " is set to " + text
                + before.map(b -> ", it was " + b).orElse(""));
    }
}
