package galena.build.folder;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What is laid over a build without editing it. A prediction is made of a build and an overlay, and of nothing else.
 *
 * @param adjustments part to position 0..1
 * @param temperature °C; 25 if empty
 * @param supply other state of the supply
 * @param strays added to those of the build
 * @param couplings in place of those of the build that join the same coils, else added
 * @param calibration accepted, if it shall apply
 * @param probes test points at which a probe is connected
 */
public record Overlay(
        Map<String, Double> adjustments,
        OptionalDouble temperature,
        Optional<SupplyState> supply,
        List<Stray> strays,
        List<Coupled> couplings,
        Optional<Calibration> calibration,
        Set<String> probes) {
    /** Nothing laid over. */
    public static final Overlay NONE = new Overlay(
            Map.of(), OptionalDouble.empty(), Optional.empty(), List.of(), List.of(), Optional.empty(), Set.of());

    /**
     * The supply at another state.
     *
     * @param voltage open circuit, volts
     * @param resistance inside, ohms
     */
    public record SupplyState(double voltage, double resistance) {
        public SupplyState {
            if (!Double.isFinite(voltage)) throw new IllegalArgumentException("a supply voltage is finite");
            if (!(resistance >= 0) || Double.isInfinite(resistance))
                throw new IllegalArgumentException("a supply resistance is zero or above");
        }
    }

    public Overlay {
        adjustments.forEach((name, position) -> {
            if (!(position >= 0 && position <= 1))
                throw new IllegalArgumentException(name + ": a position runs from 0 to 1, not " + position);
        });
        adjustments = Collections.unmodifiableMap(new TreeMap<>(adjustments));
        strays = List.copyOf(strays);
        couplings = List.copyOf(couplings);
        probes = Collections.unmodifiableSet(new TreeSet<>(probes));
    }

    /** With one adjustment at another position (0..1). */
    public Overlay set(String part, double position) {
        Map<String, Double> changed = new LinkedHashMap<>(adjustments);
        changed.put(part, position);
        return new Overlay(changed, temperature, supply, strays, couplings, calibration, probes);
    }

    /** At another temperature (°C). */
    public Overlay atTemperature(double celsius) {
        return new Overlay(adjustments, OptionalDouble.of(celsius), supply, strays, couplings, calibration, probes);
    }

    public Overlay withSupply(SupplyState state) {
        return new Overlay(adjustments, temperature, Optional.of(state), strays, couplings, calibration, probes);
    }

    public Overlay withStrays(List<Stray> added) {
        return new Overlay(adjustments, temperature, supply, added, couplings, calibration, probes);
    }

    public Overlay withCouplings(List<Coupled> changed) {
        return new Overlay(adjustments, temperature, supply, strays, changed, calibration, probes);
    }

    public Overlay withCalibration(Calibration accepted) {
        return new Overlay(adjustments, temperature, supply, strays, couplings, Optional.of(accepted), probes);
    }

    /** With a probe connected at a test point. */
    public Overlay probing(String point) {
        Set<String> connected = new LinkedHashSet<>(probes);
        connected.add(point);
        return new Overlay(adjustments, temperature, supply, strays, couplings, calibration, connected);
    }
}
