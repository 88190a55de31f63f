package galena.build.guard;

import galena.engine.part.Part;
import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Every number of a device's model, each as a factor on it. Models are records of numbers and of further records (a JFET's two
 * junctions); their components are gone through as they stand, so that a parameter added to a model is guarded without a word here.
 */
final class DeviceParameters {
    private DeviceParameters() {}

    /** "Q1 saturation current", "Q1 gate-drain zero bias capacitance"; those that are zero are left out. */
    static List<Scaled> of(Part device) {
        List<Scaled> all = new ArrayList<>();
        for (RecordComponent component : device.getClass().getRecordComponents()) {
            if (!component.getType().isRecord()) continue;
            Record model = (Record) Objects.requireNonNull(value(component, device));
            String words =
                    component.getName().equals("model") || component.getName().equals("junction")
                            ? ""
                            : " " + words(component.getName(), "-");
            add(all, device.name() + words, model, changed ->
                    (Part) with((Record) (Object) device, component, changed));
        }
        return all;
    }

    private static void add(List<Scaled> all, String name, Record model, Function<Record, Part> part) {
        for (RecordComponent component : model.getClass().getRecordComponents()) {
            if (component.getType().isRecord()) {
                Record inner = (Record) value(component, model);
                if (inner == null) continue; // a MOSFET without a body diode
                String words = name + " " + words(component.getName(), "-");
                add(all, words, inner, changed -> part.apply(with(model, component, changed)));
            } else if (component.getType() == double.class) {
                double value = (double) Objects.requireNonNull(value(component, model));
                if (value == 0) continue;
                DoubleFunction<Part> factor = s -> part.apply(with(model, component, value * s));
                all.add(new Scaled(name + " " + words(component.getName(), " "), factor, 0));
            }
        }
    }

    /** "zeroBiasCapacitance" as "zero bias capacitance". */
    private static String words(String name, String between) {
        return name.replaceAll("([A-Z])", between + "$1").toLowerCase(Locale.ROOT);
    }

    private static @Nullable Object value(RecordComponent component, Object record) {
        try {
            return component.getAccessor().invoke(record);
        } catch (ReflectiveOperationException closed) {
            throw new IllegalStateException(component + " cannot be read", closed);
        }
    }

    private static Record with(Record record, RecordComponent changed, Object value) {
        RecordComponent[] components = record.getClass().getRecordComponents();
        Class<?>[] types = new Class<?>[components.length];
        @Nullable Object[] values = new @Nullable Object[components.length];
        for (int k = 0; k < components.length; k++) {
            types[k] = components[k].getType();
            values[k] = components[k].getName().equals(changed.getName()) ? value : value(components[k], record);
        }
        try {
            Constructor<? extends Record> constructor = record.getClass().getDeclaredConstructor(types);
            return constructor.newInstance(values);
        } catch (ReflectiveOperationException closed) {
            throw new IllegalStateException(record.getClass() + " cannot be made anew", closed);
        }
    }
}
