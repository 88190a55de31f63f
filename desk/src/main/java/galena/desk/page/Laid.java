package galena.desk.page;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.Calibration;
import galena.build.folder.Layout;
import galena.build.folder.Overlay;
import galena.build.wiring.CircuitOf;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/**
 * What the page lays over the build without writing it: adjustments being tried, another temperature, another supply voltage.
 *
 * @param adjustments part to position 0..1, in pencil until they are written
 * @param temperature °C
 * @param supply open-circuit voltage, V
 */
record Laid(Map<String, Double> adjustments, OptionalDouble temperature, OptionalDouble supply) {
    private static final ObjectMapper MAPPER = new ObjectMapper();

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

    /** What was in pencil when the build was last open; nothing when that can't be told. */
    static Laid kept(Path folder) {
        try {
            JsonNode json = MAPPER.readTree(file(folder).toFile());
            Laid laid = NOTHING;
            for (Map.Entry<String, JsonNode> one : json.path("adjustments").properties()) {
                double position = one.getValue().asDouble(-1);
                if (position >= 0 && position <= 1) laid = laid.turned(one.getKey(), position);
            }
            if (json.path("temperature").isNumber())
                laid = laid.warmed(OptionalDouble.of(json.get("temperature").asDouble()));
            if (json.path("supply").isNumber())
                laid = laid.fed(OptionalDouble.of(json.get("supply").asDouble()));
            return laid;
        } catch (IOException none) {
            return NOTHING;
        }
    }

    /** Keeps it in the cache. It is pencil: a crash may lose the last of it. */
    void keep(Path folder, Consumer<Exception> faults) {
        ObjectNode json = MAPPER.createObjectNode();
        adjustments.forEach(json.putObject("adjustments")::put);
        temperature.ifPresent(celsius -> json.put("temperature", celsius));
        supply.ifPresent(volts -> json.put("supply", volts));
        try {
            Files.createDirectories(Layout.CACHE.in(folder));
            Files.writeString(file(folder), json.toString(), StandardCharsets.UTF_8);
        } catch (IOException disk) {
            faults.accept(disk);
        }
    }

    private static Path file(Path folder) {
        return Layout.CACHE.in(folder).resolve("pencil.json");
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
        Optional<Calibration> calibration = folder.calibration();
        return calibration.isPresent() ? overlay.withCalibration(calibration.get()) : overlay;
    }
}
