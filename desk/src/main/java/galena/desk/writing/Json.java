package galena.desk.writing;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import galena.build.figure.Figure;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;

/**
 * JSON as Galena writes it: two blanks of indent, lines ended by a line feed everywhere, numbers in SI units with twelve figures at
 * most, figures in the one shape of {@code {value, unit, low, high, basis, quantity, at}} or {@code {missing, reason}}.
 */
public final class Json {
    /** The version of everything written here; a change that could break a reader raises it. */
    static final int VERSION = 1;

    private static final MathContext FIGURES = new MathContext(12);

    private final StringWriter text = new StringWriter();
    private final JsonGenerator generator;

    /** Something that writes; files can't fail here, so its exception is never seen. */
    private interface Writing {
        void write() throws IOException;
    }

    private Json(boolean indented) throws IOException {
        generator = new JsonFactory().createGenerator(text);
        if (!indented) return;
        DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        printer.indentObjectsWith(indenter);
        printer.indentArraysWith(indenter);
        generator.setPrettyPrinter(printer);
    }

    /** One document of a kind: its head, then what {@code body} writes into it. */
    public static String document(String kind, java.util.function.Consumer<Json> body) {
        return document(kind, true, body);
    }

    /** The same in one line, for a program that waits. */
    public static String line(String kind, java.util.function.Consumer<Json> body) {
        return document(kind, false, body);
    }

    private static String document(String kind, boolean indented, java.util.function.Consumer<Json> body) {
        try {
            Json json = new Json(indented);
            json.generator.writeStartObject();
            json.generator.writeNumberField("galena", VERSION);
            json.text("kind", kind);
            body.accept(json);
            json.generator.writeEndObject();
            json.generator.close();
            return json.text + "\n";
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    private static void quietly(Writing writing) {
        try {
            writing.write();
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    public Json text(String name, String value) {
        quietly(() -> generator.writeStringField(name, value));
        return this;
    }

    public Json truth(String name, boolean value) {
        quietly(() -> generator.writeBooleanField(name, value));
        return this;
    }

    public Json number(String name, double value) {
        quietly(() -> {
            generator.writeFieldName(name);
            generator.writeNumber(rounded(value));
        });
        return this;
    }

    /** An array of plain numbers. */
    public Json numbers(String name, Iterable<Double> values) {
        quietly(() -> {
            generator.writeArrayFieldStart(name);
            for (double value : values) generator.writeNumber(rounded(value));
            generator.writeEndArray();
        });
        return this;
    }

    public Json object(String name, Runnable body) {
        quietly(() -> {
            generator.writeObjectFieldStart(name);
            body.run();
            generator.writeEndObject();
        });
        return this;
    }

    /** An array of objects. */
    public <T> Json each(String name, Iterable<T> items, java.util.function.Consumer<T> body) {
        quietly(() -> {
            generator.writeArrayFieldStart(name);
            for (T item : items) {
                generator.writeStartObject();
                body.accept(item);
                generator.writeEndObject();
            }
            generator.writeEndArray();
        });
        return this;
    }

    /** An array of figures. */
    public Json figures(String name, Iterable<? extends Figure> figures) {
        return this.<Figure>each(name, java.util.List.copyOf(list(figures)), this::figureFields);
    }

    private static java.util.List<Figure> list(Iterable<? extends Figure> figures) {
        java.util.List<Figure> list = new java.util.ArrayList<>();
        figures.forEach(list::add);
        return list;
    }

    public Json texts(String name, Iterable<String> texts) {
        quietly(() -> {
            generator.writeArrayFieldStart(name);
            for (String one : texts) generator.writeString(one);
            generator.writeEndArray();
        });
        return this;
    }

    public Json figure(String name, Figure figure) {
        return object(name, () -> figureFields(figure));
    }

    private void figureFields(Figure figure) {
        if (figure instanceof Figure.Known known) {
            number("value", known.value()).text("unit", unit(known));
            number("low", known.low()).number("high", known.high());
            text("basis", known.basis()).text("quantity", known.quantity()).text("at", known.at());
        } else if (figure instanceof Figure.Missing missing) {
            text("missing", missing.quantity()).text("reason", missing.reason());
        }
    }

    /** The unit that the number is in: the plain SI unit, 1 for shares, so that no reader has to know a prefix. */
    private static String unit(Figure.Known known) {
        return switch (known.unit()) {
            case FRACTION, NUMBER, RATIO -> "1";
            case KELVIN -> "K";
            case COULOMB -> "C";
            case PPM_PER_KELVIN -> "1/K";
            default -> known.unit().symbol();
        };
    }

    private static BigDecimal rounded(double value) {
        BigDecimal rounded = new BigDecimal(value).round(FIGURES).stripTrailingZeros();
        return rounded.scale() < 0 && rounded.scale() > -13 ? rounded.setScale(0) : rounded;
    }
}
