package galena.trade.device;

import galena.trade.source.Provenance;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * A builder's own device from a plain map, all numbers in SI.
 *
 * <pre>{@code
 * {type: "BF256B", kind: "n-jfet", source: "measured on the bench",
 *  saturation_current: 0.009,                                          // typical or measured
 *  forward_transconductance: {min: 4.5e-3, typ: 5e-3, at: {VDS: 15}}}   // printed limits and test conditions
 * }</pre>
 *
 * <p>{@code kind} is a {@link Family#word()}, the other keys are {@link DeviceQuantity#word()}s; a list of such maps
 * under one key gives rows at several test conditions.
 */
public final class DeviceData {
    private static final List<String> FIGURES = List.of("min", "typ", "max", "at");

    private final List<String> problems = new ArrayList<>();
    private final List<Printed> rows = new ArrayList<>();

    private DeviceData() {}

    /**
     * @param map the device
     * @throws DeviceDataException with every problem found
     */
    public static Device from(Map<String, ?> map) {
        return new DeviceData().read(map);
    }

    private Device read(Map<String, ?> map) {
        String type = text(map, "type", "");
        Family family = family(text(map, "kind", ""));
        Provenance provenance = Provenance.builder(text(map, "source", "the builder"));
        String availability = text(map, "availability", "");
        map.forEach((key, value) -> {
            if (List.of("type", "kind", "source", "availability").contains(key)) return;
            DeviceQuantity quantity = quantity(key);
            if (quantity == null) return;
            for (Object each : value instanceof List<?> list ? list : List.of(value)) row(quantity, each, provenance);
        });
        if (type.isBlank()) problems.add("type: missing; a device needs its type number");
        if (!problems.isEmpty()) throw new DeviceDataException(problems);
        try {
            return Device.of(new Sheet(type, family, rows, availability));
        } catch (IllegalArgumentException e) {
            throw new DeviceDataException(List.of(String.valueOf(e.getMessage())));
        }
    }

    private String text(Map<String, ?> map, String key, String otherwise) {
        Object value = map.get(key);
        if (value == null) return otherwise;
        if (value instanceof String text) return text;
        problems.add(key + ": \"" + value + "\" is no text; put it in quotes");
        return otherwise;
    }

    private Family family(String word) {
        List<String> words = new ArrayList<>();
        for (Family family : Family.values()) {
            if (family.word().equals(word)) return family;
            words.add(family.word());
        }
        problems.add("kind: \"" + word + "\" is not one of " + String.join(", ", words));
        return Family.N_JFET; // never used: a problem has been noted
    }

    private @Nullable DeviceQuantity quantity(String key) {
        for (DeviceQuantity quantity : DeviceQuantity.values()) {
            if (quantity.word().equals(key)) return quantity;
        }
        problems.add(key + ": no such quantity; known ones are printed limits in words, as saturation_current, "
                + "cutoff_voltage, current_gain, forward_voltage, capacitance");
        return null;
    }

    private void row(DeviceQuantity quantity, Object value, Provenance provenance) {
        if (value instanceof Number number) {
            add(quantity, Map.of("typ", number), Map.of(), provenance);
            return;
        }
        if (!(value instanceof Map<?, ?> figures)) {
            problems.add(
                    quantity.word() + ": \"" + value + "\" is neither a number nor min, typ, max with test conditions");
            return;
        }
        Map<String, Number> limits = new LinkedHashMap<>();
        Map<String, Double> at = new LinkedHashMap<>();
        figures.forEach((key, figure) -> {
            if (!FIGURES.contains(String.valueOf(key))) {
                problems.add(quantity.word() + "." + key + ": not one of " + String.join(", ", FIGURES));
            } else if ("at".equals(key)) {
                conditions(quantity, figure, at);
            } else if (figure instanceof Number number) {
                limits.put(String.valueOf(key), number);
            } else {
                problems.add(quantity.word() + "." + key + ": \"" + figure + "\" is no number");
            }
        });
        add(quantity, limits, at, provenance);
    }

    private void conditions(DeviceQuantity quantity, Object given, Map<String, Double> at) {
        if (!(given instanceof Map<?, ?> conditions)) {
            problems.add(quantity.word() + ".at: test conditions are a map such as {VDS: 15, VGS: 0}");
            return;
        }
        conditions.forEach((symbol, figure) -> {
            if (figure instanceof Number number) at.put(String.valueOf(symbol), number.doubleValue());
            else problems.add(quantity.word() + ".at." + symbol + ": \"" + figure + "\" is no number");
        });
    }

    private void add(
            DeviceQuantity quantity, Map<String, Number> limits, Map<String, Double> at, Provenance provenance) {
        for (Number number : limits.values()) {
            double value = number.doubleValue();
            boolean voltage = quantity.unit().equals("V");
            if (!Double.isFinite(value) || value == 0 || (value < 0 && !voltage)) {
                problems.add(String.format(
                        Locale.ROOT, "%s: %s is no possible value in %s", quantity.word(), number, quantity.unit()));
                return;
            }
        }
        try {
            Printed row = new Printed(
                    quantity, figure(limits, "min"), figure(limits, "typ"), figure(limits, "max"), at, provenance);
            row.range();
            rows.add(row);
        } catch (IllegalArgumentException e) {
            problems.add(quantity.word() + ": " + e.getMessage());
        }
    }

    private static OptionalDouble figure(Map<String, Number> limits, String which) {
        Number number = limits.get(which);
        return number == null ? OptionalDouble.empty() : OptionalDouble.of(number.doubleValue());
    }
}
