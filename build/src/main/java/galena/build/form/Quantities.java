package galena.build.form;

import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.quantity.AtFrequency;
import galena.build.quantity.BadQuantity;
import galena.build.quantity.Engineering;
import galena.build.quantity.Quantity;
import galena.build.quantity.Range;
import galena.build.quantity.Unit;
import galena.build.source.Node;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The types of quantities. Limits are inclusive, in SI. */
public final class Quantities {
    private Quantities() {}

    /** One quantity. */
    public static Type one(Unit unit, double low, double high) {
        return new One(unit, low, high);
    }

    /** A range of quantities, each end within the limits. */
    public static Type range(Unit unit, double low, double high) {
        return new Ends(unit, low, high);
    }

    /** One quantity, or a range where the part can be adjusted. */
    public static Type oneOrRange(Unit unit, double low, double high) {
        return new OneOrEnds(new One(unit, low, high), new Ends(unit, low, high));
    }

    /** A quantity at a frequency. */
    public static Type atFrequency(Unit unit, double low, double high) {
        return new At(unit, low, high);
    }

    private record One(Unit unit, double low, double high) implements Type {
        @Override
        public Optional<Object> read(Node node, Notes notes) {
            Optional<String> text = notes.text(node);
            if (text.isEmpty()) return Optional.empty();
            try {
                Quantity read = Quantity.read(text.get(), unit);
                return outside(read, low, high, node, notes) ? Optional.empty() : Optional.of(read);
            } catch (BadQuantity bad) {
                return notes.bad(node, bad);
            }
        }

        @Override
        public ObjectNode schema(Definitions definitions) {
            return definitions.reference(unit.word(), () -> QuantitySchema.one(unit));
        }
    }

    private record Ends(Unit unit, double low, double high) implements Type {
        @Override
        public Optional<Object> read(Node node, Notes notes) {
            Optional<String> text = notes.text(node);
            if (text.isEmpty()) return Optional.empty();
            try {
                Range read = Range.read(text.get(), unit);
                boolean bad =
                        outside(read.low(), low, high, node, notes) || outside(read.high(), low, high, node, notes);
                return bad ? Optional.empty() : Optional.of(read);
            } catch (BadQuantity bad) {
                return notes.bad(node, bad);
            }
        }

        @Override
        public ObjectNode schema(Definitions definitions) {
            return definitions.reference("range_of_" + unit.word(), () -> QuantitySchema.range(unit));
        }
    }

    private record OneOrEnds(One one, Ends ends) implements Type {
        @Override
        public Optional<Object> read(Node node, Notes notes) {
            boolean dots = node instanceof Node.Scalar scalar && scalar.text().contains("..");
            return dots ? ends.read(node, notes) : one.read(node, notes);
        }

        @Override
        public ObjectNode schema(Definitions definitions) {
            ObjectNode either = Definitions.object();
            either.putArray("anyOf").add(one.schema(definitions)).add(ends.schema(definitions));
            return either;
        }
    }

    private record At(Unit unit, double low, double high) implements Type {
        @Override
        public Optional<Object> read(Node node, Notes notes) {
            Optional<String> text = notes.text(node);
            if (text.isEmpty()) return Optional.empty();
            try {
                AtFrequency read = AtFrequency.read(text.get(), unit);
                return outside(read.value(), low, high, node, notes) ? Optional.empty() : Optional.of(read);
            } catch (BadQuantity bad) {
                return notes.bad(node, bad);
            }
        }

        @Override
        public ObjectNode schema(Definitions definitions) {
            return definitions.reference(unit.word() + "_at_frequency", () -> QuantitySchema.atFrequency(unit));
        }
    }

    private static boolean outside(Quantity read, double low, double high, Node node, Notes notes) {
        if (low <= read.value() && read.value() <= high) return false;
        String limits = Engineering.exact(low, read.unit()) + " to " + Engineering.exact(high, read.unit());
        String remedy = "Allowed: " + limits + "."
                + mistakenPrefix(read, low, high).map(r -> " " + r).orElse("");
        notes.bad(node, Notes.quoted(read.text()) + (read.value() < low ? " is too small" : " is too large"), remedy);
        return true;
    }

    /** The commonest slip of all: M for m, m for M, or M for µ. */
    private static Optional<String> mistakenPrefix(Quantity read, double low, double high) {
        String text = read.text();
        List<String> meant = Stream.of(
                        text.replaceFirst("M", "m"), text.replaceFirst("M", "µ"), text.replaceFirst("m", "M"))
                .filter(swapped -> !swapped.equals(text) && fits(swapped, read.unit(), low, high))
                .toList();
        return meant.isEmpty()
                ? Optional.empty()
                : Optional.of("M is mega, m is milli. Nearest: " + String.join(" or ", meant));
    }

    private static boolean fits(String text, Unit unit, double low, double high) {
        try {
            double value = Quantity.read(text, unit).value();
            return low <= value && value <= high;
        } catch (BadQuantity no) {
            return false;
        }
    }
}
