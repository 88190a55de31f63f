package galena.build.spread;

import galena.build.folder.Build;
import galena.build.folder.Supply;
import galena.build.predict.Progress;
import galena.build.predict.QuickEnvelope;
import galena.build.predict.Running;
import galena.build.quantity.Quantity;
import galena.build.wiring.CircuitOf;
import galena.build.wiring.Unknown;
import galena.build.wiring.Unknowns;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Battery;
import galena.engine.part.Trimmer;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.Family;
import galena.engine.steady.Followed;
import galena.engine.steady.Follower;
import galena.engine.steady.Retrim;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Draws, solves, trims and reads one build. Immutable; many threads share it. */
final class Sampler {
    private static final long UNNUMBERED = -1;
    private static final int HARMONICS = 5;
    private static final double USUAL_HARMONICS = -30;
    private static final double CLEAN = 0.05;
    /** Where the carrier turns back so near to its channel, no set tells the difference: 50 Hz at 1 MHz. */
    private static final double ON_CHANNEL = 5e-5;

    private static final Accuracy ACCURACY = Accuracy.LIVE;

    private final Build build;
    private final Running typical;
    private final Conditions conditions;
    private final String trimmer;
    private final Progress progress;
    private final ThreadLocal<Workplace> workplaces = ThreadLocal.withInitial(Workplace::new);

    Sampler(Running typical, Conditions conditions, String trimmer, Progress progress) {
        this.build = typical.build();
        this.typical = typical;
        this.conditions = conditions;
        this.trimmer = trimmer;
        this.progress = progress;
    }

    /** What every copy is held to; without a word of the intent, the usual. */
    SpreadReport.Limits limits() {
        return new SpreadReport.Limits(
                build.intent().harmonics().map(Quantity::value).orElse(USUAL_HARMONICS), CLEAN);
    }

    /** Numbers of the unit cube that a build takes: those of its unknowns, temperature and charge. */
    static int numbers(List<Unknown> unknowns) {
        return Unknowns.numbers(unknowns) + 2;
    }

    Drawn draw(long number, double[] u) {
        double temperature = conditions.temperature(u[u.length - 2]);
        double charge = conditions.charge(u[u.length - 1]);
        Circuit circuit = circuit(u, temperature, charge);
        Map<Drawn.Quantity, Double> values = new EnumMap<>(Drawn.Quantity.class);
        Map<String, Double> voltages = new LinkedHashMap<>();
        List<String> failures = new ArrayList<>();
        read(circuit, values, voltages, failures);
        return new Drawn(number, temperature, charge, values, voltages, failures, u);
    }

    /** A copy that was made elsewhere, of the typical one's structure, at the circuit's own temperature. */
    Drawn judge(Circuit circuit) {
        Map<Drawn.Quantity, Double> values = new EnumMap<>(Drawn.Quantity.class);
        Map<String, Double> voltages = new LinkedHashMap<>();
        List<String> failures = new ArrayList<>();
        read(circuit, values, voltages, failures);
        return new Drawn(UNNUMBERED, circuit.temperature(), 1, values, voltages, failures, new double[0]);
    }

    /** The copy of these numbers at a temperature (°C) and a charge. */
    Circuit circuit(double[] u, double temperature, double charge) {
        Circuit drawn = typical.assembled().drawn(u);
        if (build.supply().orElse(null) instanceof Supply.OfBattery named
                && drawn.part(Supply.NAME).orElse(null) instanceof Battery b) {
            galena.trade.battery.Battery battery = CircuitOf.battery(named);
            drawn = drawn.with(
                    new Battery(b.name(), b.plus(), b.minus(), battery.emf(charge), battery.resistance(charge)));
        }
        return drawn.atTemperature(temperature);
    }

    private void read(
            Circuit circuit, Map<Drawn.Quantity, Double> values, Map<String, Double> voltages, List<String> failures) {
        Equations equations = Equations.of(circuit);
        if (!(OperatingPointLadder.near(equations, typical.point().x()) instanceof OperatingPoint.Found point)) {
            failures.add("no operating point");
            return;
        }
        Optional<Startup> startup = Startup.readiest(point);
        if (startup.isEmpty()) {
            failures.add("does not start");
            return;
        }
        values.put(Drawn.Quantity.MARGIN, startup.get().margin());
        if (!startup.get().grows()) {
            failures.add("does not start");
            return;
        }
        Workplace work = workplaces.get();
        Optional<Followed> asSet = solve(work.follower, equations, point, startup.get());
        Optional<SteadyState.Found> trimmed =
                asSet.flatMap(orbit -> trim(work.follower, circuit, orbit, values, failures));
        if (asSet.isEmpty() || trimmed.isEmpty()) {
            failures.add("no steady oscillation");
            return;
        }
        values.put(Drawn.Quantity.AS_SET, asSet(asSet.get(), trimmed.get()));
        figures(trimmed.get().waveforms(), values, failures);
        for (String net : circuit.nets()) {
            if (!net.contains(".")) voltages.put(net, trimmed.get().waveforms().meanVoltage(net));
        }
        work.envelope.ifPresent(envelope -> depth(envelope, trimmed.get(), values, failures));
    }

    /** The carrier as set is solved on the coarser mesh only; the trimmed one tells what that mesh is wrong by. */
    private static double asSet(Followed asSet, SteadyState.Found trimmed) {
        double meshes = trimmed.waveforms().frequency()
                / Followed.of(trimmed).waveforms().frequency();
        return asSet.waveforms().frequency() * meshes;
    }

    private Optional<Followed> solve(Follower follower, Equations equations, OperatingPoint.Found point, Startup s) {
        Optional<Followed> near = follower.follow(equations, Followed.of(typical.state()));
        if (near.isPresent()) return near;
        return new SteadyOscillation(ACCURACY, progress.watch()).solve(point, s) instanceof SteadyState.Found cold
                ? Optional.of(Followed.of(cold))
                : Optional.empty();
    }

    /** Turns the trimmer to the wanted carrier as a builder would; the stop where it can't be reached. */
    private Optional<SteadyState.Found> trim(
            Follower follower,
            Circuit circuit,
            Followed asSet,
            Map<Drawn.Quantity, Double> values,
            List<String> failures) {
        Optional<Quantity> carrier = build.intent().carrier();
        if (carrier.isEmpty() || trimmer.isEmpty()) return settled(follower, asSet);
        Trimmer part = (Trimmer) circuit.part(trimmer).orElseThrow();
        Family family = position -> Equations.of(circuit.with(part.at(position)));
        Retrim.Outcome outcome = follower.toFrequency(
                family, 0, 1, part.position(), asSet, carrier.get().value());
        if (outcome instanceof Retrim.Trimmed there) {
            values.put(Drawn.Quantity.TRIM, there.parameter());
            return Optional.of(there.state());
        }
        if (outcome instanceof Retrim.OutOfRange stop) {
            failures.add(trimmer + " does not reach the channel");
            values.put(
                    Drawn.Quantity.MISSED,
                    stop.state().waveforms().frequency() - carrier.get().value());
            return Optional.of(stop.state());
        }
        if (outcome instanceof Retrim.TurnsBack back) {
            double missed = back.value() - carrier.get().value();
            if (Math.abs(missed) <= ON_CHANNEL * carrier.get().value())
                values.put(Drawn.Quantity.TRIM, back.parameter());
            else {
                failures.add(trimmer + " does not reach the channel");
                values.put(Drawn.Quantity.MISSED, missed);
            }
            return Optional.of(back.states().get(0));
        }
        failures.add("the orbit was lost while trimming");
        return settled(follower, asSet);
    }

    private static Optional<SteadyState.Found> settled(Follower follower, Followed orbit) {
        return follower.settle(orbit) instanceof SteadyState.Found found ? Optional.of(found) : Optional.empty();
    }

    private void figures(Waveforms w, Map<Drawn.Quantity, Double> values, List<String> failures) {
        int coil = w.equations().current(typical.outputBranch()).orElseThrow();
        double carrier = w.amplitude(coil, 0, 1), strongest = 0;
        for (int h = 2; h <= HARMONICS; h++) strongest = Math.max(strongest, w.amplitude(coil, 0, h));
        double level = 20 * Math.log10(strongest / carrier);
        values.put(Drawn.Quantity.OUTPUT, carrier);
        values.put(Drawn.Quantity.HARMONIC, level);
        if (level > limits().harmonic()) {
            failures.add("a harmonic is too strong");
        }
        w.equations().current(Supply.NAME).ifPresent(supply -> values.put(Drawn.Quantity.SUPPLY, -w.mean(supply)));
    }

    /** The wanted depth under the distortion that still counts as clean, the audio level being the builder's to set. */
    private void depth(
            QuickEnvelope envelope,
            SteadyState.Found carrier,
            Map<Drawn.Quantity, Double> values,
            List<String> failures) {
        double wanted = build.intent().modulation().orElseThrow().value();
        Optional<QuickEnvelope.Look> look = envelope.at(carrier, wanted);
        if (look.isEmpty()) {
            failures.add("the wanted depth is not reached");
            return;
        }
        values.put(Drawn.Quantity.AUDIO, look.get().audio());
        look.get().negativePeak().ifPresent(peak -> values.put(Drawn.Quantity.DEPTH, peak));
        values.put(Drawn.Quantity.DISTORTION, look.get().distortion());
        if (look.get().distortion() > CLEAN) failures.add("the wanted depth distorts");
    }

    /** What one thread keeps from build to build. */
    private final class Workplace {
        private final Follower follower = new Follower(
                typical.state().waveforms().equations(), typical.state().site(), ACCURACY, progress.watch());
        private final Optional<QuickEnvelope> envelope = typical.audioSource()
                .filter(source -> build.intent().modulation().isPresent() && typical.audioLevel() > 0)
                .map(source -> new QuickEnvelope(
                        typical.state(),
                        source,
                        typical.outputBranch(),
                        typical.audioLevel(),
                        ACCURACY,
                        progress.watch()));
    }
}
