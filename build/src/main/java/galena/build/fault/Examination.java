package galena.build.fault;

import galena.build.fault.Reading.What;
import galena.build.fault.Symptoms.Outcome;
import galena.build.folder.Supply;
import galena.build.folder.TestPoint;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.wiring.Names;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Load;
import galena.engine.part.Part;
import galena.engine.part.Resistor;
import galena.engine.startup.Linearised;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.Followed;
import galena.engine.steady.Follower;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads one copy of a build. The meter stands on every net that is read, in all copies alike, so that a net left floating by a
 * fault reads what a meter would make of it; on sound nets it weighs nothing.
 */
final class Examination {
    /** A digital meter behind the resistor at its tip, Ω (common practice). */
    private static final double METER = 10.1e6;

    /** Where audio is measured, Hz. */
    private static final double TONE = 1000;

    private static final Accuracy ACCURACY = Accuracy.LIVE;

    private final Running typical;
    private final List<Reading> readings;
    private final Progress progress;

    Examination(Running typical, List<Reading> readings, Progress progress) {
        this.typical = typical;
        this.readings = readings;
        this.progress = progress;
    }

    Symptoms of(Circuit copy) {
        Circuit circuit = metered(copy);
        Equations equations = Equations.of(circuit);
        if (!(OperatingPointLadder.near(equations, typical.point().x()) instanceof OperatingPoint.Found point))
            return new Symptoms(Outcome.UNSOLVED, "no operating point was found", Map.of());
        Map<Reading, Double> values = new LinkedHashMap<>();
        audio(point, values);
        Optional<Startup> startup = Startup.readiest(point);
        if (startup.isEmpty() || !startup.get().grows()) return silent(point, values);
        Optional<Followed> near = solved(equations, Followed.of(typical.state()));
        if (near.isPresent()) return running(circuit, near.get(), values);
        SteadyState state = new SteadyOscillation(ACCURACY, progress.watch()).solve(point, startup.get());
        if (state instanceof SteadyState.Found found) return running(circuit, Followed.of(found), values);
        return new Symptoms(Outcome.UNSOLVED, "it starts, but no steady oscillation was found: " + state, Map.of());
    }

    private Circuit metered(Circuit copy) {
        List<Part> meters = new ArrayList<>();
        for (Reading reading : readings)
            if (reading.what() == What.DIRECT && copy.nets().contains(reading.at()))
                meters.add(new Resistor("meter(" + reading.at() + ")", reading.at(), Circuit.GROUND, METER));
        return copy.plus(meters.toArray(Part[]::new));
    }

    /** From an orbit nearby, where the copy still has a place to pin the phase at. */
    private Optional<Followed> solved(Equations equations, Followed start) {
        if (equations.circuit().part(start.site().part()).isEmpty()) return Optional.empty();
        Followed carried = start.carriedTo(equations);
        Follower follower = new Follower(equations, carried.site(), ACCURACY, progress.watch());
        return follower.follow(equations, carried)
                .flatMap(orbit -> follower.settle(orbit) instanceof SteadyState.Found found
                        ? Optional.of(Followed.of(found))
                        : Optional.empty());
    }

    /** The operating point's own answer to a tone; what is below a millivolt is nobody's reading. */
    private void audio(OperatingPoint.Found point, Map<Reading, Double> values) {
        if (typical.audioSource().isEmpty() || !(typical.audioLevel() > 0)) return;
        double[] drive = point.equations().unitDeparture(typical.audioSource().get());
        double[][] x = Linearised.at(point.equations(), point.x()).respond(TONE, drive);
        for (Reading reading : readings) {
            if (reading.what() != What.AUDIO) continue;
            int net = point.equations().net(reading.at());
            values.put(reading, typical.audioLevel() * Math.hypot(x[0][net], x[1][net]));
        }
    }

    private Symptoms silent(OperatingPoint.Found point, Map<Reading, Double> values) {
        for (Reading reading : readings) {
            if (reading.what() == What.SUPPLY) values.put(reading, -point.current(Supply.NAME));
            if (reading.what() == What.LEVEL) values.put(reading, 0.0);
            if (reading.what() == What.DIRECT) values.put(reading, point.voltage(reading.at()));
        }
        return new Symptoms(Outcome.SILENT, "", values);
    }

    private Symptoms running(Circuit circuit, Followed orbit, Map<Reading, Double> values) {
        Waveforms w = orbit.waveforms();
        for (Reading reading : readings) {
            if (reading.what() == What.CARRIER) values.put(reading, w.frequency());
            if (reading.what() == What.SUPPLY) values.put(reading, -w.meanCurrent(Supply.NAME));
            if (reading.what() == What.LEVEL)
                level(circuit, orbit, reading.at()).ifPresent(level -> values.put(reading, level));
            if (reading.what() == What.DIRECT) values.put(reading, w.meanVoltage(reading.at()));
        }
        return new Symptoms(Outcome.RUNS, "", values);
    }

    /** With the probe connected: nothing where it stops the oscillation, empty where that could not be solved. */
    private Optional<Double> level(Circuit circuit, Followed orbit, String name) {
        TestPoint point = typical.build().points().get(name);
        if (point == null) throw new IllegalStateException("no test point " + name);
        if (point.probe().isEmpty()) return Optional.of(amplitude(orbit.waveforms(), point));
        Circuit probed = circuit.plus(new Load(
                Names.probe(name),
                point.at(),
                point.to(),
                point.probe().get().resistance(),
                point.probe().get().capacitance()));
        Equations equations = Equations.of(probed);
        Optional<Followed> near = solved(equations, orbit);
        if (near.isPresent()) return near.map(o -> amplitude(o.waveforms(), point));
        if (!(OperatingPointLadder.climb(equations) instanceof OperatingPoint.Found rest)) return Optional.empty();
        Optional<Startup> startup = Startup.readiest(rest);
        if (startup.isEmpty() || !startup.get().grows()) return Optional.of(0.0);
        return new SteadyOscillation(ACCURACY, progress.watch()).solve(rest, startup.get())
                        instanceof SteadyState.Found found
                ? Optional.of(amplitude(found.waveforms(), point))
                : Optional.empty();
    }

    private static double amplitude(Waveforms w, TestPoint point) {
        return w.amplitude(w.equations().net(point.at()), w.equations().net(point.to()), 1);
    }
}
