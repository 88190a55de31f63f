package galena.build.form;

import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.Node;
import galena.build.source.Node.Scalar;
import java.util.Map;
import java.util.Optional;

/** A tolerance: 5 %, ±5 %, or the letter printed on the part (IEC 60062, symmetric tolerances). */
public record Tolerance() implements Type {
    private static final double WIDEST = 0.8;
    private static final Map<String, Double> LETTERS =
            Map.of("B", 0.001, "C", 0.0025, "D", 0.005, "F", 0.01, "G", 0.02, "J", 0.05, "K", 0.1, "M", 0.2);
    private static final Type FRACTION = Quantities.one(Unit.FRACTION, 0, WIDEST);

    @Override
    public Optional<Object> read(Node node, Notes notes) {
        if (!(node instanceof Scalar scalar)) return FRACTION.read(node, notes);
        Double letter = LETTERS.get(scalar.text());
        if (letter != null) return Optional.of(new Quantity(letter, Unit.FRACTION, scalar.text()));
        String bare = scalar.text().replaceFirst("^\\s*(±|\\+/-|\\+-)\\s*", "");
        return FRACTION.read(new Scalar(scalar.span(), scalar.path(), bare, scalar.style()), notes);
    }

    @Override
    public ObjectNode schema(Definitions definitions) {
        return Definitions.object()
                .put("type", "string")
                .put("pattern", "^\\s*(?:[BCDFGJKM]|(?:±|\\+/-|\\+-)?\\s*" + Unit.FRACTION.pattern() + ")\\s*$");
    }
}
