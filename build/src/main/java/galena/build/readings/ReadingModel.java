package galena.build.readings;

import galena.build.folder.Build;
import galena.build.folder.LogEntry.What;
import galena.build.folder.Overlay;
import galena.build.folder.Probe;
import galena.build.folder.Supply;
import galena.build.folder.TestPoint;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Progress;
import galena.build.predict.Quiet;
import galena.build.predict.Running;
import galena.build.source.BadInputException;
import galena.build.wiring.Assembled;
import galena.build.wiring.CircuitOf;
import galena.build.wiring.Unknown;
import galena.build.wiring.Unknowns;
import galena.engine.circuit.Circuit;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Jfet;
import galena.engine.part.Load;
import galena.engine.part.Part;
import galena.engine.steady.Accuracy;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;

/**
 * The readings asked for, as functions of the unknowns. What it is asked is kept in order; questions are about a run of them, so that
 * readings not yet taken can stand behind those that were and cost nothing until they are asked about. Keeps the arrays of its
 * solvers: one thread at a time, which it divides into several itself.
 */
public final class ReadingModel {
    private static final String LOAD = "touched at ";
    private static final String ACROSS = "put across ";
    private static final Probe NOTHING = new Probe("none", 1e15, 1e-21);

    private final Build build;
    private final List<Asked> asked;
    private final List<Unknown> unknowns;
    private final List<Circumstance> circumstances;
    private final List<Latent> latents;
    private final List<Setting> settings;
    private final int[] settingOf;
    /** By reading: the circuit as loaded while it is read, where that moves nothing but the reading itself by a little. */
    private final Map<Integer, Setting> inPassing;
    /** What such a load adds to its reading, found once. */
    private final Map<Integer, Double> shifts = new ConcurrentHashMap<>();

    private final double carrier;
    private final Progress progress;

    private ReadingModel(
            Build build,
            List<Asked> asked,
            List<Unknown> unknowns,
            List<Circumstance> circumstances,
            List<Latent> latents,
            List<Setting> settings,
            Map<Integer, Setting> inPassing,
            double carrier,
            Progress progress) {
        this.build = build;
        this.asked = asked;
        this.unknowns = unknowns;
        this.circumstances = circumstances;
        this.latents = latents;
        this.settings = settings;
        this.inPassing = inPassing;
        this.carrier = carrier;
        this.progress = progress;
        settingOf = new int[asked.size()];
        for (int k = 0; k < settingOf.length; k++) {
            Situation own = asked.get(k).situation(), under = inPassing.containsKey(k) ? own.untouched() : own;
            settingOf[k] = IntStream.range(0, settings.size())
                    .filter(j -> settings.get(j).situation().equals(under))
                    .findFirst()
                    .orElseThrow();
        }
    }

    /**
     * The values of a run of the readings, and the periods that they were read off, from which others nearby start.
     *
     * @param first of the run
     * @param values sizes as natural logarithms, levels in dB, mean voltages in V
     */
    public record Readings(int first, double[] values, Periods periods) {}

    /** Solved periods by setting; opaque. */
    public static final class Periods {
        private final List<Optional<Setting.State>> states;

        private Periods(List<Optional<Setting.State>> states) {
            this.states = states;
        }
    }

    /**
     * @param build whose accepted calibration, if any, is not looked at
     * @param wanted each of which {@link Asked#canBeHad can be had}
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws Running.NotRunning when the build as drawn does not oscillate
     */
    public static ReadingModel of(Build build, List<Asked> wanted, Progress progress)
            throws BadInputException, NoOperatingPoint, Running.NotRunning {
        List<String> instruments = instruments(wanted);
        List<Asked> asked = wanted.stream()
                .map(a -> a.instrument().filter(instruments::contains).isPresent() ? a : a.alone())
                .toList();
        Running drawn = Running.of(build, Overlay.NONE, Accuracy.LIVE, progress);
        List<Part> added = Candidates.of(build, drawn);
        Set<String> still = Candidates.still(build, drawn);
        Map<Integer, Setting> inPassing = new HashMap<>();
        Set<Situation> situations = new LinkedHashSet<>();
        for (Asked one : asked)
            situations.add(isInPassing(one, still) ? one.situation().untouched() : one.situation());
        Assembled first = CircuitOf.build(build, Overlay.NONE).changed(c -> c.plus(added.toArray(Part[]::new)));
        List<Unknown> unknowns = Unknowns.of(build, first);
        List<Circumstance> circumstances = Circumstance.of(build, List.copyOf(situations));
        List<Latent> latents = latents(build, unknowns, circumstances, instruments, first.base());
        List<Setting> settings = new ArrayList<>();
        for (Situation situation : situations) {
            Circuit base = base(build, situation, with(added, places(asked, still, situation)));
            settings.add(setting(situation, base, unknowns, circumstances, Set.of(), latents.size(), progress));
        }
        for (int k = 0; k < asked.size(); k++) {
            if (!isInPassing(asked.get(k), still)) continue;
            Situation own = asked.get(k).situation();
            Circuit base = base(build, own.untouched(), with(added, places(asked, still, own.untouched())))
                    .with(load(own.point().orElseThrow(), own.load().orElseThrow()));
            inPassing.put(k, setting(own, base, unknowns, circumstances, Set.of(), latents.size(), progress));
        }
        besideOneAnother(settings);
        double carrier = drawn.state().waveforms().frequency();
        return new ReadingModel(build, asked, unknowns, circumstances, latents, settings, inPassing, carrier, progress);
    }

    /** A probe on a net that stands still loads nothing that swings: the circuit is solved without it. */
    private static boolean isInPassing(Asked asked, Set<String> still) {
        Situation s = asked.situation();
        boolean level = asked.what() == What.VOLTAGE || asked.what() == What.AMPLITUDE;
        return level
                && s.load().isPresent()
                && s.added() == 0
                && s.point()
                        .map(p -> still.contains(p.at()) && p.to().equals(Circuit.GROUND))
                        .orElse(false);
    }

    /** Nothing, in the places where loads are put in passing: circuits with and without them then have one structure. */
    private static List<Part> places(List<Asked> asked, Set<String> still, Situation under) {
        Map<String, Part> places = new LinkedHashMap<>();
        for (Asked one : asked) {
            if (!isInPassing(one, still) || !one.situation().untouched().equals(under)) continue;
            TestPoint p = one.situation().point().orElseThrow();
            places.put(p.name(), load(p, NOTHING));
        }
        return List.copyOf(places.values());
    }

    private static Load load(TestPoint at, Probe probe) {
        return new Load(LOAD + at.name(), at.at(), at.to(), probe.resistance(), probe.capacitance());
    }

    private static List<Part> with(List<Part> some, List<Part> more) {
        List<Part> all = new ArrayList<>(some);
        all.addAll(more);
        return all;
    }

    private static Circuit base(Build build, Situation situation, List<Part> added) throws BadInputException {
        Overlay overlay = Overlay.NONE;
        for (var set : situation.set().entrySet()) overlay = overlay.set(set.getKey(), set.getValue());
        if (situation.celsius().isPresent())
            overlay = overlay.atTemperature(situation.celsius().getAsDouble());
        Optional<Supply> supply = build.supply();
        if (situation.supply().isPresent() && supply.isPresent())
            overlay = overlay.withSupply(new Overlay.SupplyState(
                    situation.supply().getAsDouble(),
                    CircuitOf.state(supply.get()).resistance()));
        Circuit circuit = Quiet.of(build, CircuitOf.build(build, overlay).circuit());
        List<Part> more = new ArrayList<>(added);
        situation.point().ifPresent(p -> {
            situation.load().ifPresent(l -> more.add(load(p, l)));
            if (situation.added() > 0) more.add(new Capacitor(ACROSS + p.name(), p.at(), p.to(), situation.added()));
        });
        return circuit.plus(more.toArray(Part[]::new));
    }

    private static Setting setting(
            Situation situation,
            Circuit base,
            List<Unknown> unknowns,
            List<Circumstance> circumstances,
            Set<String> frozen,
            int numbers,
            Progress progress) {
        int temperature = -1, at = Unknowns.numbers(unknowns);
        for (Circumstance c : circumstances) {
            if (c.part().isEmpty() && c.isOf(situation)) temperature = at;
            at++;
        }
        Steps steps = new Steps(unknowns, circumstances, situation, frozen);
        return new Setting(situation, base, steps, temperature, numbers, progress.watch());
    }

    private static void besideOneAnother(List<Setting> settings) {
        for (Setting setting : settings.subList(1, settings.size())) setting.startNear(settings.get(0));
    }

    /** Those by which more than one amplitude was read: what they are wrong by is shared. */
    private static List<String> instruments(List<Asked> asked) {
        List<String> named =
                asked.stream().flatMap(a -> a.instrument().stream()).toList();
        return named.stream()
                .distinct()
                .filter(i -> Collections.frequency(named, i) > 1)
                .toList();
    }

    /** The number that is the gain of the instrument by which a reading was taken; −1 for none that is shared. */
    private int gainOf(int reading) {
        Optional<String> instrument = asked.get(reading).instrument();
        for (int k = latents.size() - 1; k >= 0 && instrument.isPresent(); k--)
            if (latents.get(k).key().equals(Circumstance.gain(instrument.get()).key())) return k;
        return -1;
    }

    /** What the instrument's own gain makes of a value. */
    private double read(int reading, double value, double[] z) {
        int number = gainOf(reading);
        if (number < 0) return value;
        Asked one = asked.get(reading);
        return one.modelled(one.shown(value) * Math.max(0, 1 + one.gain() * z[number]));
    }

    private static List<Latent> latents(
            Build build,
            List<Unknown> unknowns,
            List<Circumstance> circumstances,
            List<String> instruments,
            Circuit base) {
        List<Latent> latents = new ArrayList<>();
        for (Unknown unknown : unknowns) {
            Part part = base.part(unknown.part()).orElseThrow();
            for (int k = 0; k < unknown.numbers(); k++)
                latents.add(Showing.latent(
                        unknown, part, k, build.part(unknown.part()).isPresent()));
        }
        for (Circumstance c : circumstances) latents.add(c.latent());
        for (String instrument : instruments) latents.add(Circumstance.gain(instrument));
        return List.copyOf(latents);
    }

    /** What is unknown: one for each number. */
    public List<Latent> latents() {
        return latents;
    }

    public List<Asked> asked() {
        return asked;
    }

    /** The carrier of the build as drawn, Hz. */
    public double carrier() {
        return carrier;
    }

    /**
     * The readings first to last, the last not included.
     *
     * @param z one number for each latent
     * @param near readings of numbers nearby, of the same run
     * @return empty when one of the circuits does not oscillate
     */
    public Optional<Readings> at(double[] z, Optional<Readings> near, int first, int last) {
        Set<Integer> wanted = wanted(first, last);
        List<Optional<Setting.State>> states = IntStream.range(0, settings.size())
                .parallel()
                .mapToObj(k -> wanted.contains(k)
                        ? settings.get(k).at(z, near.flatMap(n -> n.periods.states.get(k)))
                        : Optional.<Setting.State>empty())
                .toList();
        return readings(states, z, first, last);
    }

    /** The same from cold and to the live accuracy on its own mesh: what a reading would be. */
    public Optional<Readings> exact(double[] z, int first, int last) {
        Set<Integer> wanted = wanted(first, last);
        List<Optional<Setting.State>> states = IntStream.range(0, settings.size())
                .mapToObj(k -> wanted.contains(k) ? settings.get(k).exact(z) : Optional.<Setting.State>empty())
                .toList();
        double[] values = new double[last - first];
        for (int k = first; k < last; k++) {
            Setting own = inPassing.get(k);
            Optional<Setting.State> state = own == null ? states.get(settingOf[k]) : own.exact(z);
            if (state.isEmpty()) return Optional.empty();
            values[k - first] = read(k, value(k, state.get()), z);
            if (!Double.isFinite(values[k - first])) return Optional.empty();
        }
        return Optional.of(new Readings(first, values, new Periods(states)));
    }

    private double value(int reading, Setting.State state) {
        return Readout.of(asked.get(reading), state.equations()).value(state);
    }

    /** What a load in passing adds, with everything typical; empty where that could not be solved. */
    private Optional<Double> shift(int reading) {
        Setting own = inPassing.get(reading);
        if (own == null) return Optional.of(0.0);
        Double known = shifts.get(reading);
        if (known != null) return Optional.of(known);
        double[] typical = new double[latents.size()];
        Optional<Setting.State> without = settings.get(settingOf[reading]).at(typical, Optional.empty());
        Optional<Double> found =
                without.flatMap(s -> own.beside(s, typical).map(l -> value(reading, l) - value(reading, s)));
        found.ifPresent(s -> shifts.put(reading, s));
        return found;
    }

    private Set<Integer> wanted(int first, int last) {
        Set<Integer> wanted = new LinkedHashSet<>();
        for (int k = first; k < last; k++) wanted.add(settingOf[k]);
        return wanted;
    }

    private Optional<Readings> readings(List<Optional<Setting.State>> states, double[] z, int first, int last) {
        double[] values = new double[last - first];
        for (int k = first; k < last; k++) {
            Optional<Setting.State> state = states.get(settingOf[k]);
            Optional<Double> shift = state.isEmpty() ? Optional.empty() : shift(k);
            if (shift.isEmpty()) return Optional.empty();
            values[k - first] = read(k, value(k, state.orElseThrow()) + shift.get(), z);
            if (!Double.isFinite(values[k - first])) return Optional.empty();
        }
        return Optional.of(new Readings(first, values, new Periods(states)));
    }

    /** Derivatives of readings by every number: a row a reading, a column a latent. */
    public double[][] slopes(Readings readings, double[] z) {
        int first = readings.first, count = readings.values.length;
        double[][] all = new double[count][];
        wanted(first, first + count).parallelStream().forEach(k -> {
            Setting.State state = readings.periods.states.get(k).orElseThrow();
            int[] mine = IntStream.range(first, first + count)
                    .filter(r -> settingOf[r] == k)
                    .toArray();
            List<Readout> readouts = new ArrayList<>();
            for (int r : mine) readouts.add(Readout.of(asked.get(r), state.equations()));
            double[][] rows = settings.get(k).slopes(state, z, readouts);
            for (int r = 0; r < mine.length; r++) all[mine[r] - first] = withGain(mine[r], rows[r], readings);
        });
        return all;
    }

    private double[] withGain(int reading, double[] slopes, Readings readings) {
        int number = gainOf(reading);
        if (number < 0) return slopes;
        Asked one = asked.get(reading);
        double shown = one.shown(readings.values[reading - readings.first]);
        slopes[number] = one.error(shown, one.gain() * shown);
        return slopes;
    }

    /** Whether the circuit has what a latent is of, as the build has it; a fault may have put something else there. */
    public boolean has(int latent) {
        return settings.get(0).has(latent);
    }

    /** The net that a latent is capacitance of against ground, beyond parts: strays drawn and what nobody drew. */
    public Optional<String> grounded(int latent) {
        Latent of = latents.get(latent);
        boolean stray = of.kind() == Latent.Kind.STRAY || of.kind() == Latent.Kind.ADDED;
        if (!stray || !(settings.get(0).base().part(of.part()).orElse(null) instanceof Capacitor c)) {
            return Optional.empty();
        }
        if (c.to().equals(Circuit.GROUND)) return Optional.of(c.from());
        return c.from().equals(Circuit.GROUND) ? Optional.of(c.to()) : Optional.empty();
    }

    /** What is shown of a latent that is no circumstance, in its unit, at these numbers. */
    public double shown(int latent, double[] z) {
        Latent of = latents.get(latent);
        Part part = settings.get(0).part(of.part(), z).orElseThrow();
        return Showing.value(of, part, carrier);
    }

    /**
     * The same readings of a circuit with something changed. What is unknown of a device that was replaced no longer says anything;
     * of other parts it stays.
     */
    public ReadingModel changed(UnaryOperator<Circuit> change) {
        List<Setting> other = settings.stream().map(s -> changed(s, change)).toList();
        besideOneAnother(other);
        Map<Integer, Setting> passing = new HashMap<>();
        inPassing.forEach((k, s) -> passing.put(k, changed(s, change)));
        return new ReadingModel(build, asked, unknowns, circumstances, latents, other, passing, carrier, progress);
    }

    private Setting changed(Setting setting, UnaryOperator<Circuit> change) {
        Circuit base = change.apply(setting.base());
        Set<String> frozen = new HashSet<>();
        for (Part part : base.parts()) {
            boolean device = part instanceof Jfet || part instanceof Bipolar;
            boolean same = setting.base().part(part.name()).map(part::equals).orElse(false);
            if (device && !same) frozen.add(part.name());
        }
        return setting(setting.situation(), base, unknowns, circumstances, frozen, latents.size(), progress);
    }
}
