package galena.build.spread;

import galena.build.folder.Build;
import galena.build.folder.Intent;
import galena.build.folder.Supply;
import galena.build.predict.Envelope;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.quantity.Quantity;
import galena.build.wiring.CircuitOf;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Battery;
import galena.engine.part.Part;
import galena.engine.part.Trimmer;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.Family;
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
    private static final int HARMONICS = 5;
    private static final double USUAL_HARMONICS = -30;
    private static final double CLEAN = 0.05;
    private static final Accuracy ACCURACY = Accuracy.LIVE;

    private final Build build;
    private final Running typical;
    private final List<Unknown> unknowns;
    private final Conditions conditions;
    private final String trimmer;
    private final Progress progress;

    Sampler(Running typical, List<Unknown> unknowns, Conditions conditions, String trimmer, Progress progress) {
        this.build = typical.build();
        this.typical = typical;
        this.unknowns = unknowns;
        this.conditions = conditions;
        this.trimmer = trimmer;
        this.progress = progress;
    }

    /** Numbers of the unit cube that a build takes: those of its unknowns, temperature and charge. */
    static int numbers(List<Unknown> unknowns) {
        return unknowns.stream().mapToInt(Unknown::numbers).sum() + 2;
    }

    Drawn draw(long number, double[] u) {
        double temperature = conditions.temperature(u[u.length - 2]);
        double charge = conditions.charge(u[u.length - 1]);
        Circuit circuit = circuit(u, temperature, charge);
        Map<Drawn.Quantity, Double> values = new EnumMap<>(Drawn.Quantity.class);
        List<String> failures = new ArrayList<>();
        read(circuit, values, failures);
        return new Drawn(number, temperature, charge, values, failures, u);
    }

    private Circuit circuit(double[] u, double temperature, double charge) {
        Map<String, Part> parts = new LinkedHashMap<>();
        for (Part part : typical.circuit().parts()) parts.put(part.name(), part);
        int at = 0;
        for (Unknown unknown : unknowns) {
            Part sofar = parts.get(unknown.part());
            if (sofar == null) throw new IllegalStateException("no part " + unknown.part());
            parts.put(unknown.part(), unknown.draw().from(sofar, u, at));
            at += unknown.numbers();
        }
        if (build.supply().orElse(null) instanceof Supply.OfBattery named
                && parts.get(Supply.NAME) instanceof Battery b) {
            galena.trade.battery.Battery battery = CircuitOf.battery(named);
            parts.put(
                    Supply.NAME,
                    new Battery(b.name(), b.plus(), b.minus(), battery.emf(charge), battery.resistance(charge)));
        }
        return Circuit.of(new ArrayList<>(parts.values())).atTemperature(temperature);
    }

    private void read(Circuit circuit, Map<Drawn.Quantity, Double> values, List<String> failures) {
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
        Optional<SteadyState.Found> asSet = solve(equations, point, startup.get());
        if (asSet.isEmpty()) {
            failures.add("no steady oscillation");
            return;
        }
        values.put(Drawn.Quantity.AS_SET, asSet.get().waveforms().frequency());
        SteadyState.Found trimmed = trim(circuit, asSet.get(), values, failures);
        figures(trimmed.waveforms(), values, failures);
        depth(trimmed, values, failures);
    }

    private Optional<SteadyState.Found> solve(Equations equations, OperatingPoint.Found point, Startup startup) {
        SteadyOscillation steady = new SteadyOscillation(ACCURACY, progress.watch());
        if (steady.solveNear(equations, typical.state()) instanceof SteadyState.Found near) return Optional.of(near);
        return steady.solve(point, startup) instanceof SteadyState.Found cold ? Optional.of(cold) : Optional.empty();
    }

    /** Turns the trimmer to the wanted carrier as a builder would; the stop where it can't be reached. */
    private SteadyState.Found trim(
            Circuit circuit, SteadyState.Found asSet, Map<Drawn.Quantity, Double> values, List<String> failures) {
        Optional<Quantity> carrier = build.intent().carrier();
        if (carrier.isEmpty() || trimmer.isEmpty()) return asSet;
        Trimmer part = (Trimmer) circuit.part(trimmer).orElseThrow();
        Family family = position -> Equations.of(circuit.with(part.at(Math.max(0, Math.min(1, position)))));
        Retrim.Outcome outcome = new Retrim(ACCURACY, progress.watch())
                .toFrequency(family, 0, 1, part.position(), asSet, carrier.get().value());
        if (outcome instanceof Retrim.Trimmed there) {
            values.put(Drawn.Quantity.TRIM, there.parameter());
            return there.state();
        }
        if (outcome instanceof Retrim.OutOfRange stop) {
            failures.add(trimmer + " does not reach the channel");
            return stop.state();
        }
        failures.add("the orbit was lost while trimming");
        return asSet;
    }

    private void figures(Waveforms w, Map<Drawn.Quantity, Double> values, List<String> failures) {
        int coil = w.equations().current(typical.outputCoil()).orElseThrow();
        double carrier = w.amplitude(coil, 0, 1), strongest = 0;
        for (int h = 2; h <= HARMONICS; h++) strongest = Math.max(strongest, w.amplitude(coil, 0, h));
        double level = 20 * Math.log10(strongest / carrier);
        values.put(Drawn.Quantity.OUTPUT, carrier);
        values.put(Drawn.Quantity.HARMONIC, level);
        Intent intent = build.intent();
        if (level > intent.harmonics().map(Quantity::value).orElse(USUAL_HARMONICS)) {
            failures.add("a harmonic is too strong");
        }
        w.equations().current(Supply.NAME).ifPresent(supply -> values.put(Drawn.Quantity.SUPPLY, -w.mean(supply)));
    }

    /** The wanted depth under the distortion that still counts as clean, the audio level being the builder's to set. */
    private void depth(SteadyState.Found carrier, Map<Drawn.Quantity, Double> values, List<String> failures) {
        Optional<Quantity> wanted = build.intent().modulation();
        Optional<String> source = typical.audioSource();
        if (wanted.isEmpty() || source.isEmpty()) return;
        Optional<Double> distortion = Envelope.distortionAt(
                carrier,
                source.get(),
                typical.outputCoil(),
                wanted.get().value(),
                typical.audioLevel(),
                ACCURACY,
                progress.watch());
        if (distortion.isEmpty()) {
            failures.add("the wanted depth is not reached");
            return;
        }
        values.put(Drawn.Quantity.DISTORTION, distortion.get());
        if (distortion.get() > CLEAN) failures.add("the wanted depth distorts");
    }
}
