package galena.engine.circuit;

import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.Part;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Parts joined by nets, at one temperature. Immutable; the {@code with} methods give changed copies. */
public final class Circuit {
    /** The net that all voltages are measured from. */
    public static final String GROUND = "ground";

    /** Temperature at which part values are stated, °C. */
    public static final double REFERENCE_TEMPERATURE = 25;

    private static final double COLDEST = -100;
    private static final double HOTTEST = 200;

    private final Map<String, Part> parts;
    private final List<String> nets;
    private final double temperature;

    private Circuit(Map<String, Part> parts, double temperature) {
        this.parts = Collections.unmodifiableMap(parts);
        this.temperature = temperature;
        Set<String> seen = new LinkedHashSet<>();
        for (Part part : parts.values()) seen.addAll(part.nets());
        seen.remove(GROUND);
        this.nets = List.copyOf(seen);
    }

    /**
     * @throws IllegalArgumentException when two parts share a name, or a coupling names what is not a coil
     */
    public static Circuit of(List<? extends Part> parts) {
        Map<String, Part> byName = new LinkedHashMap<>();
        for (Part part : parts) {
            if (byName.put(part.name(), part) != null) {
                throw new IllegalArgumentException("two parts are named " + part.name() + ": rename one");
            }
        }
        for (Part part : parts) if (part instanceof Coupling coupling) requireCoils(coupling, byName);
        return new Circuit(byName, REFERENCE_TEMPERATURE);
    }

    public static Circuit of(Part... parts) {
        return of(Arrays.asList(parts));
    }

    private static void requireCoils(Coupling coupling, Map<String, Part> parts) {
        for (String coil : List.of(coupling.first(), coupling.second())) {
            if (!(parts.get(coil) instanceof Coil)) {
                throw new IllegalArgumentException(coupling.name() + " couples " + coil + ", which is not a coil here");
            }
        }
    }

    /** All parts, in the order given. */
    public List<Part> parts() {
        return List.copyOf(parts.values());
    }

    public Optional<Part> part(String name) {
        return Optional.ofNullable(parts.get(name));
    }

    /** All nets but ground, in order of first mention. */
    public List<String> nets() {
        return nets;
    }

    /** °C. */
    public double temperature() {
        return temperature;
    }

    /** The same parts at another temperature (°C). */
    public Circuit atTemperature(double celsius) {
        if (!(celsius >= COLDEST && celsius <= HOTTEST)) {
            throw new IllegalArgumentException("temperature " + celsius + " °C must lie within " + COLDEST + " and "
                    + HOTTEST + " °C: the device laws hold no further");
        }
        return new Circuit(new LinkedHashMap<>(parts), celsius);
    }

    /** The circuit with one part in place of the part of the same name. */
    public Circuit with(Part changed) {
        if (!parts.containsKey(changed.name())) {
            throw new IllegalArgumentException("no part is named " + changed.name());
        }
        Map<String, Part> copy = new LinkedHashMap<>(parts);
        copy.put(changed.name(), changed);
        return new Circuit(copy, temperature);
    }

    /** The circuit with parts added. */
    public Circuit plus(Part... added) {
        List<Part> all = new ArrayList<>(parts.values());
        all.addAll(Arrays.asList(added));
        return of(all).atTemperature(temperature);
    }
}
