package galena.build.listen;

import galena.build.folder.PartKind;
import galena.build.predict.Envelope;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.wiring.Names;
import galena.engine.circuit.Circuit;
import galena.engine.circuit.Structure;
import galena.engine.part.Capacitor;
import galena.engine.part.CurrentSource;
import galena.engine.part.Part;
import galena.engine.part.Resistor;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.engine.steady.Accuracy;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * An unmodulated carrier with the places where something acts on it slowly.
 *
 * @param full the carrier
 * @param held the same, with the capacitors that the carrier hardly moves turned into the voltages that they hold
 * @param still names of those capacitors
 * @param inputs one for each channel of the programme: a source of the full circuit, and how much of it a volt is
 */
record Carrier(SteadyState.Found full, SteadyState.Found held, List<String> still, Map<String, Double> inputs) {
    /** A capacitor whose carrier is below this share of the tank's holds an audio voltage. */
    private static final double HARDLY = 0.01;

    private static final int HARMONICS = 3;
    private static final String LEFT = "left.listen", RIGHT = "right.listen";

    Carrier {
        still = List.copyOf(still);
        inputs = new LinkedHashMap<>(inputs);
    }

    /** @return empty when the carrier is lost while its capacitors are held */
    static Optional<Carrier> of(Running running, String source, Progress progress) {
        boolean stereo = running.build()
                .part(source)
                .filter(p -> p.kind() == PartKind.STEREO)
                .isPresent();
        Map<String, Double> inputs = new LinkedHashMap<>();
        Optional<SteadyState.Found> full = Optional.of(running.state());
        if (stereo) {
            List<Part> parts = new ArrayList<>(running.circuit().parts());
            inputs.put(LEFT, inject(running.circuit(), Names.resistance(source), LEFT, parts));
            inputs.put(RIGHT, inject(running.circuit(), Names.right(source), RIGHT, parts));
            Circuit joined = Circuit.of(parts).atTemperature(running.circuit().temperature());
            full = Envelope.centre(running.state(), joined, Accuracy.LIVE, progress.watch());
        } else {
            inputs.put(source, 1.0);
        }
        return full.flatMap(f -> {
            List<String> still = still(f);
            Circuit circuit = Envelope.hold(f.waveforms(), still);
            return Envelope.centre(f, circuit, Accuracy.LIVE, progress.watch())
                    .map(held -> new Carrier(f, held, still, inputs));
        });
    }

    /** A volt in series with a channel's resistance is a current of volt over resistance across it; its size is returned. */
    private static double inject(Circuit circuit, String resistance, String name, List<Part> parts) {
        Resistor series = (Resistor) circuit.part(resistance).orElseThrow();
        parts.add(new CurrentSource(name, series.from(), series.to(), new Wave.Direct(0)));
        return 1 / series.resistance();
    }

    private static List<String> still(SteadyState.Found carrier) {
        Waveforms waveforms = carrier.waveforms();
        double tank = waveforms.amplitude(carrier.site().a(), carrier.site().b(), 1);
        Circuit circuit = waveforms.equations().circuit();
        List<String> names = new ArrayList<>();
        for (Part part : circuit.parts()) {
            if (!(part instanceof Capacitor c) || moved(waveforms, c) > HARDLY * tank) continue;
            Circuit trial = circuit.with(new VoltageSource(c.name(), c.from(), c.to(), new Wave.Direct(0)));
            if (Structure.faults(trial).stream().anyMatch(f -> f.kind().fatal())) continue;
            circuit = trial;
            names.add(c.name());
        }
        return names;
    }

    private static double moved(Waveforms waveforms, Capacitor c) {
        double sum = 0;
        for (int h = 1; h <= HARMONICS; h++) sum += waveforms.voltageAmplitude(c.from(), c.to(), h);
        return sum;
    }
}
