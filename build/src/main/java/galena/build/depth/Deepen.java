package galena.build.depth;

import galena.build.depth.Deepened.Condition;
import galena.build.depth.Deepened.Setting;
import galena.build.depth.Modulate.NoAudio;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.folder.Supply;
import galena.build.modulation.Modulator;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.predict.Running.NotRunning;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.spread.Conditions;
import galena.build.wiring.CircuitOf;
import galena.engine.circuit.Circuit;
import galena.engine.part.Preset;
import galena.engine.part.Resistor;
import galena.engine.steady.Accuracy;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Finds the audio level, and the position of every preset that sets a bias, that give the deepest modulation under a limit of
 * distortion, with a fresh and a flat battery, in cold and heat. In each condition the level is found at which a 1 kHz tone meets
 * the limit or the trough meets zero; the lowest of them holds for all. One preset at a time is moved over its travel; then, where a
 * load may be changed, it is tried with the best of them.
 */
public final class Deepen {
    /** Distortion up to which a modulation counts as clean, common practice. */
    public static final double CLEAN = 0.05;

    private static final String FLAT = "flat battery";
    private static final double[] POSITIONS = {0.1, 0.3, 0.5, 0.7, 0.9};

    /** A preset that changes the carrier by less than this from stop to stop passes audio only. */
    private static final double BIASES = 0.02;

    private static final double PROGRAMME_TOP = 4500;
    private static final double LOST = 0.89;

    /** What a load may become, as shares of what is written. */
    private static final double[] LOADS = {0.5, 0.71, 1.41, 2};

    private final BuildFolder folder;
    private final Overlay overlay;
    private final double limit;
    private final Optional<String> loaded;
    private final Progress progress;
    /** The condition that bound the setting before, and how deep by the small tone's slope: where the next search starts. */
    private String suspect = FLAT;

    private double reach = 1;
    private int done;

    private Deepen(BuildFolder folder, Overlay overlay, double limit, Optional<String> loaded, Progress progress) {
        this.folder = folder;
        this.overlay = overlay;
        this.limit = limit;
        this.loaded = loaded;
        this.progress = progress;
    }

    /**
     * @param limit of the envelope's distortion, a fraction
     * @param loaded a resistor of the build that may take half to twice its value; empty leaves all values alone
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws NotRunning when nothing oscillates as the build is set
     * @throws NoAudio when the build has no audio source
     */
    public static Deepened of(
            BuildFolder folder, Overlay overlay, double limit, Optional<String> loaded, Progress progress)
            throws BadInputException, NoOperatingPoint, NotRunning, NoAudio {
        return new Deepen(folder, overlay, limit, loaded, progress).answer();
    }

    private Deepened answer() throws BadInputException, NoOperatingPoint, NotRunning, NoAudio {
        Running asSet = Running.of(folder.build(), overlay, Accuracy.LIVE, progress);
        String source = Modulate.source(asSet);
        List<Map<String, Double>> positions = positions(asSet);
        List<Bearing> bearings = new ArrayList<>();
        for (Map<String, Double> presets : positions) {
            progress.at(0.05 + 0.6 * done++ / positions.size(), "bias and level");
            bearing(asSet, presets, OptionalDouble.empty(), source).ifPresent(bearings::add);
        }
        bearings.sort(Comparator.comparingDouble(b -> -b.depth()));
        if (loaded.isPresent()) {
            double written = resistor(asSet.circuit(), loaded.get()).resistance();
            Map<String, Double> best =
                    bearings.isEmpty() ? Map.of() : bearings.get(0).presets();
            for (double share : LOADS) {
                progress.at(0.65 + 0.2 * share / LOADS[LOADS.length - 1], "load");
                bearing(asSet, best, OptionalDouble.of(share * written), source).ifPresent(bearings::add);
            }
            bearings.sort(Comparator.comparingDouble(b -> -b.depth()));
        }
        progress.at(0.9, "each condition's own level");
        List<Setting> settings = new ArrayList<>();
        for (Bearing b : bearings) settings.add(b.setting(settings.isEmpty()));
        List<String> notes = new ArrayList<>();
        if (positions.size() == 1) notes.add("No preset of this build moves a bias; the audio level alone was sought.");
        if (settings.isEmpty()) {
            String why = "in no setting does it oscillate and modulate cleanly in every condition";
            return new Deepened(
                    folder.build().name(), source, loaded.orElse(""), limit, settings, why, asSet.audioLevel(), notes);
        }
        String binding = binding(settings, asSet, source, positions.size() > 1);
        return new Deepened(
                folder.build().name(), source, loaded.orElse(""), limit, settings, binding, asSet.audioLevel(), notes);
    }

    private static Resistor resistor(Circuit circuit, String name) {
        return (Resistor) circuit.part(name).orElseThrow();
    }

    /** As set, and one preset after the other over its travel where that moves the carrier. */
    private List<Map<String, Double>> positions(Running asSet) {
        List<Map<String, Double>> positions = new ArrayList<>();
        positions.add(Map.of());
        for (String name : folder.build().adjustments()) {
            if (!(asSet.circuit().part(name).orElseThrow() instanceof Preset)) continue;
            if (!biases(asSet, name)) continue;
            for (double p : POSITIONS) positions.add(Map.of(name, p));
        }
        return positions;
    }

    private boolean biases(Running asSet, String preset) {
        List<Double> outputs = new ArrayList<>();
        for (double p : new double[] {0.1, 0.9})
            running(asSet, overlay.set(preset, p), OptionalDouble.empty()).ifPresent(r -> outputs.add(output(r)));
        if (outputs.size() < 2) return true;
        return Math.abs(outputs.get(1) - outputs.get(0)) > BIASES * output(asSet);
    }

    private static double output(Running running) {
        return running.state().waveforms().currentAmplitude(running.outputBranch(), 1);
    }

    private Optional<Running> running(Running asSet, Overlay over, OptionalDouble load) {
        try {
            return Optional.of(Running.near(
                    asSet, folder.build(), over, circuit -> withLoad(circuit, load), Accuracy.LIVE, progress));
        } catch (BadInputException | NoOperatingPoint | NotRunning no) {
            return Optional.empty();
        }
    }

    private Circuit withLoad(Circuit circuit, OptionalDouble load) {
        if (load.isEmpty()) return circuit;
        Resistor written = resistor(circuit, loaded.orElseThrow());
        return circuit.with(written.scaled(load.getAsDouble() / written.resistance()));
    }

    private Map<String, Overlay> conditions(Overlay base) {
        Map<String, Overlay> all = new LinkedHashMap<>();
        if (folder.build().supply().orElse(null) instanceof Supply.OfBattery battery) {
            boolean fresh = battery.charge() == 1 && base.supply().isEmpty();
            all.put(fresh ? "as set, fresh battery" : "as set", base);
            if (!fresh) all.put("fresh battery", base.withSupply(state(battery, 1)));
            all.put(FLAT, base.withSupply(state(battery, Conditions.FULL.flattest())));
        } else {
            all.put("as set", base);
        }
        for (double t : new double[] {Conditions.FULL.coldest(), Conditions.FULL.warmest()}) {
            all.put(Math.round(t) + " °C", base.atTemperature(t));
        }
        return all;
    }

    private static Overlay.SupplyState state(Supply.OfBattery named, double charge) {
        var battery = CircuitOf.battery(named);
        return new Overlay.SupplyState(battery.emf(charge), battery.resistance(charge));
    }

    private Optional<Bearing> bearing(Running asSet, Map<String, Double> presets, OptionalDouble load, String source) {
        Overlay base = overlay;
        for (Map.Entry<String, Double> p : presets.entrySet()) base = base.set(p.getKey(), p.getValue());
        Map<String, Overlay> conditions = conditions(base);
        List<Borne> each = conditions.entrySet().parallelStream()
                .flatMap(c -> running(asSet, c.getValue(), load)
                        .map(r -> new Borne(c.getKey(), Modulate.modulator(r, source, progress), limit))
                        .stream())
                .toList();
        if (each.size() < conditions.size()) return Optional.empty();
        Optional<Bearing> found = Bearing.of(presets, load, each, suspect, reach);
        found.ifPresent(bearing -> {
            suspect = bearing.binds().name();
            reach = bearing.level() * bearing.binds().slope();
        });
        return found;
    }

    private String binding(List<Setting> settings, Running asSet, String source, boolean biased) {
        Setting best = settings.get(0);
        Condition tight = best.conditions().stream()
                .filter(c -> c.name().equals(best.binds()))
                .findFirst()
                .orElseThrow();
        List<String> words = new ArrayList<>();
        if (asSet.audioLevel() > 0 && best.level() > asSet.audioLevel()) {
            words.add("drive: the programme gives " + Engineering.print(asSet.audioLevel(), Unit.VOLT, 2) + " and "
                    + Engineering.print(best.level(), Unit.VOLT, 2) + " are wanted");
        }
        if (tight.suffers().equals("trough"))
            words.add("the trough meets zero: full depth is reached (" + tight.name() + ")");
        else if (tight.crestGives()) {
            words.add("supply: the crest gives first (" + tight.name() + ")"
                    + (tight.name().contains("battery") ? "" : ", more supply or less carrier leaves room"));
        } else
            words.add("bias range: the trough gives first (" + tight.name() + ")"
                    + (biased ? "" : "; a bias preset would show how far it can be moved"));
        Modulator modulator = Modulate.modulator(asSet, source, progress);
        double top = modulator.small(PROGRAMME_TOP).depth()
                / modulator.small(Modulator.USUAL_TONE).depth();
        if (top < LOST) {
            words.add("tank Q: at 4.5 kHz the depth is " + Engineering.print(top, Unit.FRACTION, 2)
                    + " of that at 1 kHz");
        }
        return String.join("; ", words);
    }
}
