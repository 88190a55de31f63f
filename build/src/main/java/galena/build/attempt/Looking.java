package galena.build.attempt;

import galena.build.folder.Build;
import galena.build.folder.Overlay;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.source.BadInputException;
import galena.build.spread.Conditions;
import galena.build.spread.Drawn;
import galena.build.spread.Judge;
import galena.build.spread.Spread;
import galena.engine.steady.Accuracy;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;

/**
 * Solves and reads builds, in three depths: the typical build alone; the same with a neighbour's copies carried over, shifted by
 * what the typical one shifted; copies of its own. Static depth is judged in {@link Judge}'s and {@link Spread}'s
 * one reading of a copy, and nowhere here.
 */
public final class Looking {
    private static final Accuracy ACCURACY = Accuracy.LIVE;

    private final Aim aim;
    private final Conditions conditions;
    private final long seed;
    private final Progress progress;

    public Looking(Aim aim, Conditions conditions, long seed, Progress progress) {
        this.aim = aim;
        this.conditions = conditions;
        this.seed = seed;
        this.progress = progress;
    }

    public Aim aim() {
        return aim;
    }

    /** Its solved carrier; empty where nothing runs. */
    public Optional<Running> running(Build build) {
        return solved(() -> Running.of(build, Overlay.NONE, ACCURACY, progress));
    }

    /** The same, followed from a neighbour's. */
    public Optional<Running> running(Build build, Running neighbour) {
        return solved(() -> Running.near(neighbour, build, Overlay.NONE, circuit -> circuit, ACCURACY, progress));
    }

    private interface Solving {
        Running now() throws BadInputException, NoOperatingPoint, Running.NotRunning;
    }

    private Optional<Running> solved(Solving solving) {
        if (progress.cancelled()) throw new CancellationException("stopped on request");
        try {
            return Optional.of(solving.now());
        } catch (BadInputException | NoOperatingPoint | Running.NotRunning doesNot) {
            return Optional.empty();
        }
    }

    /** The typical build alone. */
    public Optional<Tried> look(Build build) {
        return running(build).map(this::look);
    }

    /** The same, followed from a neighbour's carrier. */
    public Optional<Tried> look(Build build, Running neighbour) {
        return running(build, neighbour).map(this::look);
    }

    public Tried look(Running running) {
        return Tried.of(aim, running.build(), running, typical(running), tankQ(running), List.of(), false);
    }

    private Drawn typical(Running running) {
        return new Judge(running, quiet()).typical();
    }

    /** The same with a neighbour's copies carried over. */
    public Tried beside(Tried neighbour, Tried look) {
        List<Drawn> shifted = new ArrayList<>();
        for (Drawn copy : neighbour.copies()) shifted.add(shifted(copy, neighbour.typical(), look.typical()));
        return Tried.of(aim, look.build(), look.running(), look.typical(), look.tankQ(), shifted, false);
    }

    /** With copies of its own, the first so many of the seed's; those drawn already are kept. */
    public Tried draw(Tried look, int count) {
        List<Drawn> kept = look.drawn() ? look.copies() : List.of();
        List<Drawn> copies = new ArrayList<>(kept.subList(0, Math.min(count, kept.size())));
        if (copies.size() < count)
            copies.addAll(Spread.copies(look.running(), conditions, copies.size(), count, seed, quiet()));
        return Tried.of(aim, look.build(), look.running(), look.typical(), look.tankQ(), copies, true);
    }

    /** Inner work tells nothing of its progress and stops when asked. */
    private Progress quiet() {
        return new Progress() {
            @Override
            public void at(double share, String doing) {
                // the caller tells
            }

            @Override
            public boolean cancelled() {
                return progress.cancelled();
            }
        };
    }

    private static Drawn shifted(Drawn copy, Drawn from, Drawn to) {
        if (!to.values().containsKey(Drawn.Quantity.HARMONIC)) return to;
        Map<Drawn.Quantity, Double> values = new EnumMap<>(Drawn.Quantity.class);
        copy.values().forEach((quantity, value) -> {
            Double before = from.values().get(quantity), after = to.values().get(quantity);
            if (after != null) values.put(quantity, before == null ? after : shifted(quantity, value, before, after));
        });
        return new Drawn(
                copy.number(),
                copy.temperature(),
                copy.charge(),
                values,
                Map.of(),
                to.isGood() ? copy.failures() : to.failures(),
                copy.numbers());
    }

    private static double shifted(Drawn.Quantity quantity, double value, double before, double after) {
        return switch (quantity) {
            case TRIM, HARMONIC, MISSED, AS_SET -> value + after - before;
            case MARGIN -> (1 + value) * (1 + after) / (1 + before) - 1;
            default -> value * after / before;
        };
    }

    /** Loaded Q of the tank that the aerial's coil makes beside the oscillator; empty where the oscillator is that tank. */
    private OptionalDouble tankQ(Running running) {
        return OutputTank.mode(running).map(m -> OptionalDouble.of(m.q())).orElse(OptionalDouble.empty());
    }
}
