package galena.build.depth;

import galena.build.depth.ModulationReport.Cure;
import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.folder.PartKind;
import galena.build.folder.Supply;
import galena.build.modulation.AudioResponse;
import galena.build.modulation.Modulated;
import galena.build.modulation.Modulator;
import galena.build.modulation.ToneAnswer;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.predict.Running.NotRunning;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.engine.circuit.Circuit;
import galena.engine.part.Trimmer;
import galena.engine.steady.Accuracy;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Answers what a build's programme does to its carrier. The main method reads in the order of the report. */
public final class Modulate {
    /** What the project asks of a carrier with a stage between oscillator and output, and of an oscillator that is its own output. */
    static final double BUFFERED_SWING = 100;

    static final double BARE_SWING = 1000;

    private static final double RIPPLE = 100;
    private static final int MOST_CYCLES = 12_000;
    private static final double[] SWEEP = {0.1, 0.25, 0.5, 0.75, 1, 1.25, 1.5};
    private static final double WORTH = 0.9;

    private final Running running;
    private final String source;
    private final String coil;
    private final Modulator modulator;
    private final Progress progress;

    private Modulate(Running running, String source, Progress progress) {
        this.running = running;
        this.source = source;
        this.progress = progress;
        coil = running.outputBranch();
        modulator = modulator(running, source, progress);
    }

    /** The modulated current of a running build: that in its aerial. */
    static Modulator modulator(Running running, String source, Progress progress) {
        String quantity = "current in " + running.outputPart();
        return new Modulator(running.state(), source, running.outputBranch(), quantity, progress.watch());
    }

    /**
     * What is asked.
     *
     * @param level peak audio voltage; the build's own when empty
     * @param audio Hz
     * @param sweep whether other levels are wanted too
     */
    public record Question(OptionalDouble level, double audio, boolean sweep) {}

    /** Something without which no modulation can be answered; the message says what. */
    public static final class NoAudio extends Exception {
        private static final long serialVersionUID = 1;

        NoAudio(String why) {
            super(why);
        }
    }

    /**
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws NotRunning when nothing oscillates
     * @throws NoAudio when the build has no audio source, or no level for it
     */
    public static ModulationReport of(BuildFolder folder, Overlay overlay, Question question, Progress progress)
            throws BadInputException, NoOperatingPoint, NotRunning, NoAudio {
        progress.at(0, "carrier");
        Running running = Running.of(folder.build(), overlay, Accuracy.CERTIFIED, progress);
        String source = source(running);
        double level = question.level().orElse(running.audioLevel());
        if (!(level > 0)) throw new NoAudio("the audio source has no level; give one with --level");
        return new Modulate(running, source, progress).report(level, question);
    }

    static String source(Running running) throws NoAudio {
        return running.audioSource().orElseThrow(() -> new NoAudio("the build has no audio source"));
    }

    private ModulationReport report(double level, Question question) {
        progress.at(0.1, "tone");
        ToneAnswer tone = modulator.atAnyPrice(level, question.audio(), MOST_CYCLES);
        List<ToneAnswer> sweep = new ArrayList<>();
        if (question.sweep()) for (double share : SWEEP) sweep.add(modulator.at(share * level, question.audio()));
        progress.at(0.4, "audio response");
        AudioResponse response = modulator.response(audible());
        Trials trials = new Trials(running.state(), modulator, source, coil, progress);
        progress.at(0.5, "what sets it");
        Trials.Setters setters = trials.setters(response);
        progress.at(0.7, "cures");
        boolean counted = tone instanceof Modulated at && at.swing() instanceof Figure.Known;
        List<Cure> cures = counted ? trials.cures(level, question.audio(), changes()) : List.of();
        Optional<double[]> supply = supply();
        return new ModulationReport(
                running.build().name(),
                running.state().waveforms().frequency(),
                source,
                tone,
                sweep,
                response,
                setters.low(),
                setters.high(),
                supply.map(s -> s[0]).orElse(0.0),
                supply.map(s -> s[1]).orElse(0.0),
                verdict(tone, cures),
                cures,
                notes(tone));
    }

    private static double[] audible() {
        int points = 51;
        double[] audio = new double[points];
        for (int k = 0; k < points; k++) audio[k] = 50 * Math.pow(15_000.0 / 50, k / (points - 1.0));
        return audio;
    }

    /** Cures by parts, and every trimmer that leaves the carrier alone a little either way. */
    private List<Change> changes() {
        Circuit circuit = running.circuit();
        List<Change> changes = new ArrayList<>(Change.cures(circuit));
        for (String name : running.build().adjustments()) {
            if (!(circuit.part(name).orElseThrow() instanceof Trimmer)) continue;
            for (double step : new double[] {-0.2, -0.1, -0.05, 0.05, 0.1, 0.2}) {
                double position = running.position(name) + step;
                if (position < 0 || position > 1) continue;
                String to = Engineering.print(position, Unit.FRACTION, 2);
                changes.add(new Change(
                        "turn " + name + " to " + to, Change.Way.TUNING, name, running.turned(name, position)));
            }
        }
        return changes;
    }

    /** Swing (Hz) and depth for a volt of ripple on the supply. */
    private Optional<double[]> supply() {
        if (running.circuit().part(Supply.NAME).isEmpty()) return Optional.empty();
        Modulator ripple = new Modulator(running.state(), Supply.NAME, coil, "", progress.watch());
        var small = ripple.small(RIPPLE);
        return Optional.of(new double[] {small.swing(), small.depth()});
    }

    private boolean bare() {
        boolean wire = running.build().parts().values().stream().anyMatch(p -> p.kind() == PartKind.WIRE);
        return !wire && running.startup().site().part().equals(coil);
    }

    private String verdict(ToneAnswer tone, List<Cure> cures) {
        if (!(tone instanceof Modulated at)) return "swing is not known";
        if (!(at.swing() instanceof Figure.Known swing) || !(at.negativePeak() instanceof Figure.Known depth)) {
            return "swing is " + at.swing().text();
        }
        double limit = bare() ? BARE_SWING : BUFFERED_SWING;
        String stage = bare() ? "an oscillator that is its own output" : "a carrier with a stage behind the oscillator";
        String words = "swing " + Engineering.print(swing.value(), Unit.HERTZ, 2) + " at a depth of "
                + Engineering.print(depth.value(), Unit.FRACTION, 2) + ": "
                + (swing.value() <= limit ? "within" : "more than") + " the "
                + Engineering.print(limit, Unit.HERTZ, 1) + " that this project asks of " + stage;
        if (cures.isEmpty()) return words + ". Nothing that was tried lowers it.";
        Cure best = cures.get(0);
        boolean worth = best.swing() < WORTH * swing.value();
        if (!worth) return words + ". No single change that was tried lowers it by a tenth.";
        return words + ". Main cause: " + best.cause() + ". Worth most: " + best.what() + ", to "
                + Engineering.print(best.swing(), Unit.HERTZ, 2) + " at the same depth.";
    }

    private List<String> notes(ToneAnswer tone) {
        List<String> notes = new ArrayList<>();
        if (tone instanceof Modulated at && at.way() != Modulated.Way.DIRECTLY) {
            notes.add("Followed in time: an oscillation that has quit comes back from what is left in its coils, sooner"
                    + " than a bench shows.");
        }
        notes.add("Swing lines of 100 Hz and 1 kHz are this project's own; no printed limit is known.");
        return notes;
    }
}
