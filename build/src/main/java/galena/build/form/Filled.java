package galena.build.form;

import galena.build.quantity.AtFrequency;
import galena.build.quantity.Quantity;
import galena.build.quantity.Range;
import galena.build.source.Node.Entry;
import galena.build.source.Node.Mapping;
import galena.build.source.Place;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A group read by its form. Once handed on, all its values have passed. Immutable. */
public final class Filled {
    private final Form form;
    private final Mapping source;
    private final Map<String, Object> values;

    Filled(Form form, Mapping source, Map<String, Object> values) {
        this.form = form;
        this.source = source;
        this.values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }

    public Form form() {
        return form;
    }

    /** Whether the key is written, be its value good or not. */
    public boolean has(String key) {
        return source.entry(key).isPresent();
    }

    /** Keys in the order of the file. */
    public List<String> keys() {
        return List.copyOf(values.keySet());
    }

    public Optional<Quantity> quantity(String key) {
        return value(key, Quantity.class);
    }

    /** A quantity in SI, or a default where the key isn't written. */
    public double si(String key, double otherwise) {
        return quantity(key).map(Quantity::value).orElse(otherwise);
    }

    /** A quantity in SI of a key that the form requires. */
    public double si(String key) {
        return quantity(key)
                .orElseThrow(() -> new IllegalStateException("no value for " + key))
                .value();
    }

    public Optional<Range> range(String key) {
        return value(key, Range.class);
    }

    public Optional<AtFrequency> atFrequency(String key) {
        return value(key, AtFrequency.class);
    }

    public Optional<String> text(String key) {
        return value(key, String.class);
    }

    public Optional<Filled> group(String key) {
        return value(key, Filled.class);
    }

    /** The items of a list; none where the key isn't written. */
    public <T> List<T> list(String key, Class<T> kind) {
        return value(key, List.class)
                .map(list -> ((List<?>) list).stream().map(kind::cast).toList())
                .orElse(List.of());
    }

    /** Groups by name, in the order of the file; none where the key isn't written. */
    public Map<String, Filled> named(String key) {
        Map<String, Filled> named = new LinkedHashMap<>();
        value(key, Map.class)
                .ifPresent(map -> ((Map<?, ?>) map).forEach((name, group) -> named.put((String) name, (Filled) group)));
        return named;
    }

    /** Quantities by name, in the order of the file; none where the key isn't written. */
    public Map<String, Quantity> quantities(String key) {
        Map<String, Quantity> named = new LinkedHashMap<>();
        value(key, Map.class)
                .ifPresent(map -> ((Map<?, ?>) map).forEach((name, q) -> named.put((String) name, (Quantity) q)));
        return named;
    }

    /** Where the group stands. */
    public Place place() {
        return source.place();
    }

    public String path() {
        return source.path();
    }

    /** Where the value of a key stands; the group's place if the key isn't written. */
    public Place place(String key) {
        return source.value(key).map(node -> node.place()).orElse(place());
    }

    /** Where a key itself stands; the group's place if it isn't written. */
    public Place keyPlace(String key) {
        return source.entry(key).map(Entry::key).map(k -> k.place()).orElse(place());
    }

    /** The path of a key, written or not. */
    public String path(String key) {
        return path().isEmpty() ? key : path() + "." + key;
    }

    /** The value if it is of that kind; empty if it is another or not written. */
    private <T> Optional<T> value(String key, Class<T> kind) {
        Object value = values.get(key);
        return kind.isInstance(value) ? Optional.of(kind.cast(value)) : Optional.empty();
    }

    /** Names of groups with the groups as values, for equality in tests and digests. */
    @Override
    public String toString() {
        return values.toString();
    }
}
