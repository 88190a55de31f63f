package galena.build.form;

import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.Node;
import galena.build.source.Node.Scalar;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A temperature coefficient: in ppm/K, or by the letters on a ceramic capacitor, NP0, N750, P100. */
public record Coefficient() implements Type {
    /** Beyond this no part keeps its law: the engine's own limit, ±2 % per kelvin. */
    private static final double STEEPEST = 0.02;

    private static final Pattern CODE = Pattern.compile("NP0|NPO|C0G|COG|([NP])(\\d{2,4})");
    private static final double PPM = 1e-6;
    private static final Type NUMBER = Quantities.one(Unit.PPM_PER_KELVIN, -STEEPEST, STEEPEST);

    @Override
    public Optional<Object> read(Node node, Notes notes) {
        if (node instanceof Scalar scalar) {
            Matcher code = CODE.matcher(scalar.text().strip());
            if (code.matches()) return Optional.of(new Quantity(value(code), Unit.PPM_PER_KELVIN, scalar.text()));
        }
        return NUMBER.read(node, notes);
    }

    private static double value(Matcher code) {
        if (code.group(1) == null) return 0;
        double size = Integer.parseInt(code.group(2)) * PPM;
        return code.group(1).equals("N") ? -size : size;
    }

    @Override
    public ObjectNode schema(Definitions definitions) {
        ObjectNode either = Definitions.object();
        either.putArray("anyOf")
                .add(NUMBER.schema(definitions))
                .add(Definitions.object().put("type", "string").put("pattern", "^\\s*(?:" + CODE.pattern() + ")\\s*$"));
        return either;
    }
}
