package galena.build.readings;

import galena.build.folder.Build;
import galena.build.folder.Circumstances;
import galena.build.folder.LogEntry;
import galena.build.folder.Probe;
import galena.build.folder.TestPoint;
import galena.build.quantity.Quantity;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * Under what one or more readings were taken.
 *
 * @param point at which
 * @param load what touched the circuit there
 * @param set adjustments noted, 0 to 1
 * @param celsius noted temperature, °C
 * @param supply noted voltage, V
 * @param added capacitance that the builder put across the point, F; 0 for none
 */
public record Situation(
        Optional<TestPoint> point,
        Optional<Probe> load,
        Map<String, Double> set,
        OptionalDouble celsius,
        OptionalDouble supply,
        double added) {
    private static final double ZERO_CELSIUS = 273.15;

    public Situation {
        set = new TreeMap<>(set);
    }

    /** That of a logged reading: the probe noted with it, else the one that the point names. */
    public static Situation of(Build build, LogEntry reading) {
        Circumstances c = reading.circumstances();
        Optional<TestPoint> point =
                reading.at().flatMap(at -> Optional.ofNullable(build.points().get(at)));
        Map<String, Double> set = new TreeMap<>();
        c.set().forEach((name, position) -> set.put(name, position.value()));
        Optional<Probe> noted = c.probe().flatMap(Probe::known);
        return new Situation(
                point,
                point.isEmpty() ? Optional.empty() : noted.or(() -> point.get().probe()),
                set,
                number(c.temperature().map(t -> t.value() - ZERO_CELSIUS)),
                number(c.supply().map(Quantity::value)),
                point.isEmpty() ? 0 : c.added().map(Quantity::value).orElse(0.0));
    }

    private static OptionalDouble number(Optional<Double> value) {
        return value.map(OptionalDouble::of).orElseGet(OptionalDouble::empty);
    }

    /** With an adjustment at another position. */
    public Situation turned(String adjustment, double position) {
        Map<String, Double> moved = new TreeMap<>(set);
        moved.put(adjustment, position);
        return new Situation(point, load, moved, celsius, supply, added);
    }

    /** At a point, with what its probe is. */
    public Situation at(TestPoint other) {
        return new Situation(Optional.of(other), other.probe(), set, celsius, supply, 0);
    }

    /** At a point with a probe there. */
    public Situation at(TestPoint other, Optional<Probe> probe) {
        return new Situation(Optional.of(other), probe, set, celsius, supply, 0);
    }

    /** With capacitance across a point and nothing else there. */
    public Situation adding(TestPoint across, double farads) {
        return new Situation(Optional.of(across), Optional.empty(), set, celsius, supply, farads);
    }

    /** With nothing touching the circuit. */
    public Situation untouched() {
        return new Situation(Optional.empty(), Optional.empty(), set, celsius, supply, 0);
    }

    /** At another supply voltage. */
    public Situation supplied(double volts) {
        return new Situation(point, load, set, celsius, OptionalDouble.of(volts), added);
    }
}
