package galena.build.readings;

import galena.build.wiring.Bend;
import galena.build.wiring.Unknown;
import galena.engine.part.Part;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What the numbers do to the parts of one circuit: by part, in the order in which they are applied. */
final class Steps {
    /** One change of one part by some of the numbers. */
    private record Step(int[] numbers, Change change) {}

    private interface Change {
        Part on(Part sofar, double[] z);
    }

    private final Map<String, List<Step>> byPart = new LinkedHashMap<>();

    /** @param frozen parts whose unknowns say nothing here, having been replaced */
    Steps(List<Unknown> unknowns, List<Circumstance> circumstances, Situation situation, Set<String> frozen) {
        int at = 0;
        for (Unknown unknown : unknowns) {
            if (!frozen.contains(unknown.part())) {
                add(unknown.part(), new Step(numbers(at, unknown.numbers()), drawing(unknown, at)));
            }
            at += unknown.numbers();
        }
        for (Circumstance c : circumstances) {
            int number = at++;
            if (c.part().isEmpty() || !c.isOf(situation)) continue;
            add(c.part(), new Step(new int[] {number}, (sofar, z) -> c.on(sofar, z[number])));
        }
    }

    private void add(String part, Step step) {
        byPart.computeIfAbsent(part, n -> new ArrayList<>()).add(step);
    }

    private static int[] numbers(int from, int count) {
        int[] numbers = new int[count];
        for (int k = 0; k < count; k++) numbers[k] = from + k;
        return numbers;
    }

    private static Change drawing(Unknown unknown, int at) {
        return (sofar, z) -> {
            if (!unknown.isOf(sofar)) return sofar;
            double[] u = new double[unknown.numbers()];
            for (int k = 0; k < u.length; k++) u[k] = Bend.uniform(z[at + k]);
            return unknown.draw().from(sofar, u, 0);
        };
    }

    /** The part of these numbers. */
    Part on(Part base, double[] z) {
        Part part = base;
        for (Step step : byPart.getOrDefault(base.name(), List.of())) part = step.change.on(part, z);
        return part;
    }

    /** The numbers that reach a part. */
    List<Integer> numbersOf(String part) {
        List<Integer> numbers = new ArrayList<>();
        for (Step step : byPart.getOrDefault(part, List.of())) for (int number : step.numbers) numbers.add(number);
        return numbers;
    }
}
