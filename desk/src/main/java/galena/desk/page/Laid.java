package galena.desk.page;

import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.wiring.CircuitOf;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the page lays over the build without writing it: adjustments being tried, another temperature, another supply voltage.
 *
 * @param adjustments part to position 0..1, in pencil until they are written
 * @param temperature °C
 * @param supply open-circuit voltage, V
 */
record Laid(Map<String, Double> adjustments, OptionalDouble temperature, OptionalDouble supply) {
    static final Laid NOTHING = new Laid(Map.of(), OptionalDouble.empty(), OptionalDouble.empty());

    Laid {
        adjustments = Collections.unmodifiableMap(new LinkedHashMap<>(adjustments));
    }

    Laid turned(String part, double position) {
        Map<String, Double> changed = new LinkedHashMap<>(adjustments);
        changed.put(part, position);
        return new Laid(changed, temperature, supply);
    }

    /** Without what is laid over this adjustment: it has been written, or is taken back. */
    Laid released(String part) {
        Map<String, Double> changed = new LinkedHashMap<>(adjustments);
        changed.remove(part);
        return new Laid(changed, temperature, supply);
    }

    Laid warmed(OptionalDouble celsius) {
        return new Laid(adjustments, celsius, supply);
    }

    Laid fed(OptionalDouble volts) {
        return new Laid(adjustments, temperature, volts);
    }

    /** As far as it fits a build that may have changed meanwhile, with the builder's accepted calibration. */
    Overlay over(BuildFolder folder) {
        Build build = folder.build();
        Overlay overlay = Overlay.NONE;
        for (Map.Entry<String, Double> one : adjustments.entrySet())
            if (build.adjustments().contains(one.getKey())) overlay = overlay.set(one.getKey(), one.getValue());
        if (temperature.isPresent()) overlay = overlay.atTemperature(temperature.getAsDouble());
        if (supply.isPresent() && build.supply().isPresent()) {
            double resistance = CircuitOf.state(build.supply().get()).resistance();
            overlay = overlay.withSupply(new Overlay.SupplyState(supply.getAsDouble(), resistance));
        }
        Optional<galena.build.folder.Calibration> calibration = folder.calibration();
        return calibration.isPresent() ? overlay.withCalibration(calibration.get()) : overlay;
    }
}
