package galena.build.substitute;

import galena.build.attempt.Draft;
import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.source.BadInputException;
import galena.build.spread.Drawn;
import galena.build.spread.Judge;
import galena.build.wiring.CircuitOf;
import galena.build.wiring.Specimens;
import galena.engine.circuit.Circuit;
import galena.engine.part.Part;
import galena.engine.part.VoltageSource;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Predicate;
import java.util.function.Supplier;

/**
 * What may stand in place of each part of a build, at a first look: every device of the same family with typical, weakest and strongest
 * specimens, all parts of a type together, and every resistor and capacitor with neighbouring values. {@link Substitute} looks closer at
 * one part.
 *
 * @param own how the build does as it stands, trimmed
 * @param devices other types, those that fit first, nearest in supply current first
 * @param values of resistors and capacitors, in the order of the file
 */
public record Survey(Drawn own, List<DeviceChoice> devices, List<ValueRange> values) {
    public Survey {
        devices = List.copyOf(devices);
        values = List.copyOf(values);
    }

    /**
     * Solves every candidate, on as many cores as there are.
     *
     * @param running the build as it stands
     * @throws CancellationException when the progress says so
     */
    public static Survey of(Running running, Progress progress) {
        return of(running, entry -> true, progress);
    }

    /** The same of some parts only. */
    public static Survey of(Running running, Predicate<PartEntry> asked, Progress progress) {
        Judge judge = new Judge(running, progress);
        Drawn own = judge.typical();
        Values values = new Values(running, judge, own);
        List<Supplier<Object>> tasks = new ArrayList<>();
        groups(running.build(), asked).forEach((type, parts) -> Candidates.types(
                        running.build(), running.build().part(parts.get(0)).orElseThrow())
                .forEach(other -> tasks.add(() -> choice(running, judge, own, type, parts, other))));
        for (PartEntry entry : running.build().parts().values())
            if (asked.test(entry) && Values.isAsked(entry)) tasks.add(() -> values.of(entry));
        AtomicInteger done = new AtomicInteger();
        List<Object> answers = tasks.parallelStream()
                .map(task -> {
                    if (progress.cancelled()) throw new CancellationException("stopped on request");
                    Object answer = task.get();
                    progress.at((double) done.incrementAndGet() / tasks.size(), "substitutes");
                    return answer;
                })
                .toList();
        return new Survey(own, sorted(answers, own), only(answers, ValueRange.class));
    }

    private static <T> List<T> only(List<Object> answers, Class<T> kind) {
        return answers.stream().filter(kind::isInstance).map(kind::cast).toList();
    }

    private static List<DeviceChoice> sorted(List<Object> answers, Drawn own) {
        return only(answers, DeviceChoice.class).stream()
                .sorted(Comparator.comparing(DeviceChoice::fitted)
                        .thenComparing(c -> !c.fits())
                        .thenComparingDouble(c -> distance(c, own))
                        .thenComparing(DeviceChoice::type))
                .toList();
    }

    private static double distance(DeviceChoice choice, Drawn own) {
        Double is =
                choice.typical().map(d -> d.values().get(Drawn.Quantity.SUPPLY)).orElse(null);
        Double was = own.values().get(Drawn.Quantity.SUPPLY);
        return is == null || was == null ? Double.POSITIVE_INFINITY : Math.abs(Math.log(is / was));
    }

    /** Parts by the type they name. */
    private static Map<String, List<String>> groups(Build build, Predicate<PartEntry> asked) {
        Map<String, List<String>> groups = new LinkedHashMap<>();
        for (PartEntry entry : build.parts().values())
            entry.type().filter(type -> asked.test(entry)).ifPresent(type -> groups.computeIfAbsent(
                            type, t -> new ArrayList<>())
                    .add(entry.name()));
        return groups;
    }

    private static DeviceChoice choice(
            Running running, Judge judge, Drawn own, String type, List<String> parts, String other) {
        Optional<Drawn> typical = Optional.empty();
        Set<String> failures = new LinkedHashSet<>();
        try {
            for (Circuit circuit : specimens(running, parts, other)) {
                Optional<Drawn> drawn = judge.judge(circuit);
                if (drawn.isEmpty()) break;
                failures.addAll(
                        typical.isEmpty()
                                ? Changes.beyond(own, drawn.get())
                                : drawn.get().failures());
                if (typical.isEmpty()) typical = drawn;
            }
        } catch (BadInputException doesNotStandHere) {
            failures.add("it can't stand there: "
                    + doesNotStandHere.problems().get(0).found());
        }
        own.failures().forEach(failures::remove);
        return new DeviceChoice(parts, type, other, typical, List.copyOf(failures));
    }

    /** With typical specimens of the other type, then all weakest, then all strongest. */
    private static List<Circuit> specimens(Running running, List<String> parts, String other) throws BadInputException {
        Build changed = with(running.build(), parts, other);
        Circuit fresh = CircuitOf.build(changed, running.overlay()).circuit();
        Circuit typical = quiet(fresh, running.circuit()), weak = typical, strong = typical;
        for (String name : parts) {
            PartEntry entry = changed.part(name).orElseThrow();
            Optional<Specimens.Pair> pair =
                    Specimens.of(changed, entry, typical.part(name).orElseThrow());
            if (pair.isEmpty()) continue;
            weak = weak.with(pair.get().weak());
            strong = strong.with(pair.get().strong());
        }
        return List.of(typical, weak, strong);
    }

    /** Audio sources at rest, as the running circuit has them. */
    private static Circuit quiet(Circuit fresh, Circuit running) {
        Circuit quiet = fresh;
        for (Part part : fresh.parts())
            if (part instanceof VoltageSource && running.part(part.name()).isPresent())
                quiet = quiet.with(running.part(part.name()).get());
        return quiet.atTemperature(running.temperature());
    }

    private static Build with(Build build, List<String> parts, String other) throws BadInputException {
        Map<String, String> changes = new LinkedHashMap<>();
        for (String name : parts) changes.put(Candidates.key(build.part(name).orElseThrow()), other);
        return Draft.with(build, changes);
    }
}
