package galena.build.fault;

import galena.build.fault.Reading.What;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;

/**
 * What each of a build's faults would read.
 *
 * @param readings that were taken of every copy
 * @param healthy the build as it should be
 * @param cases one for each fault, in the order of {@link Faults}
 */
public record FaultStudy(List<Reading> readings, Symptoms healthy, List<Case> cases) {
    /** Less audio than this nobody reads beside a carrier, V. */
    private static final double LEAST_AUDIO = 0.01;

    public FaultStudy {
        readings = List.copyOf(readings);
        cases = List.copyOf(cases);
    }

    /** A fault and what it reads. */
    public record Case(Fault fault, Symptoms symptoms) {}

    /**
     * Solves every fault, on as many cores as there are.
     *
     * @param running the build as it should be
     * @throws CancellationException when the progress says so
     */
    public static FaultStudy of(Running running, Progress progress) {
        return of(running, Faults.of(running.build(), running.circuit()), progress);
    }

    /** The same of some faults only. */
    public static FaultStudy of(Running running, List<Fault> faults, Progress progress) {
        Symptoms whole = new Examination(running, Readings.of(running.build()), progress).of(running.circuit());
        List<Reading> readings = whole.values().keySet().stream()
                .filter(reading ->
                        reading.what() != What.AUDIO || whole.value(reading).orElse(0) > LEAST_AUDIO)
                .toList();
        Map<Reading, Double> values = new LinkedHashMap<>(whole.values());
        values.keySet().retainAll(readings);
        Symptoms healthy = new Symptoms(whole.outcome(), whole.remark(), values);
        Examination examination = new Examination(running, readings, progress);
        AtomicInteger done = new AtomicInteger();
        List<Case> cases = IntStream.range(0, faults.size())
                .parallel()
                .mapToObj(k -> {
                    if (progress.cancelled()) throw new CancellationException("stopped on request");
                    Fault fault = faults.get(k);
                    Case one = new Case(fault, examination.of(fault.in(running.circuit())));
                    progress.at((double) done.incrementAndGet() / faults.size(), "faults");
                    return one;
                })
                .toList();
        return new FaultStudy(readings, healthy, new ArrayList<>(cases));
    }
}
