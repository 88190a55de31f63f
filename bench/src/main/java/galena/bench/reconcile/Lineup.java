package galena.bench.reconcile;

import galena.build.fault.Fault;
import galena.build.readings.ReadingModel;
import galena.build.readings.ReadingModel.Readings;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Each fault's build with all else typical: what it reads, and how that moves with every unknown. Found once, it serves any log. */
final class Lineup {
    private final ReadingModel model;
    private final List<Fault> faults;
    private final int count;
    private final Map<Fault, Optional<Typical>> known = new ConcurrentHashMap<>();

    /** What the sound build reads, all else typical; empty where that cannot be had. */
    private final Optional<double[]> sound;

    /** @param count of the model's readings that were taken */
    Lineup(ReadingModel model, List<Fault> faults, int count) {
        this.model = model;
        this.faults = List.copyOf(faults);
        this.count = count;
        sound = model.at(new double[model.latents().size()], Optional.empty(), 0, count)
                .map(Readings::values);
    }

    /** What a typical build reads, and its slopes, a row a reading. */
    record Typical(double[] values, double[][] slopes) {}

    List<Fault> faults() {
        return faults;
    }

    ReadingModel sound() {
        return model;
    }

    /** The readings of builds with this fault. */
    ReadingModel with(Fault fault) {
        return model.changed(fault::in);
    }

    /** Whether a fault moves some reading by more than that reading's error; what moves none explains nothing. */
    boolean isHeard(Fault fault, List<Observation> read) {
        Optional<Typical> with = typical(fault);
        if (with.isEmpty()) return false;
        if (sound.isEmpty()) return true;
        for (int i = 0; i < count; i++) {
            double moved = Math.abs(with.get().values[i] - sound.get()[i]);
            if (moved > read.get(i).sigma()) return true;
        }
        return false;
    }

    /** Empty where a reading that was taken cannot be had of it, as a carrier where nothing oscillates. */
    Optional<Typical> typical(Fault fault) {
        return known.computeIfAbsent(fault, this::solved);
    }

    private Optional<Typical> solved(Fault fault) {
        try {
            ReadingModel with = with(fault);
            double[] z = new double[model.latents().size()];
            Optional<Readings> readings = with.at(z, Optional.empty(), 0, count);
            return readings.map(r -> new Typical(r.values(), with.slopes(r, z)));
        } catch (IllegalArgumentException | ArithmeticException unsolvable) {
            return Optional.empty(); // a circuit that nobody built: with no solution it explains nothing
        }
    }
}
