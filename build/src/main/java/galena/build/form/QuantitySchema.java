package galena.build.form;

import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.quantity.Unit;

/** Patterns by which editors recognise quantities: the same grammar that the reader uses. */
final class QuantitySchema {
    private static final String FREQUENCY = Unit.HERTZ.pattern();

    private QuantitySchema() {}

    static ObjectNode one(Unit unit) {
        ObjectNode schema = Definitions.object();
        if (unit == Unit.NUMBER) {
            schema.putArray("type").add("number").add("string");
            return schema.put("pattern", anchored(unit.pattern()));
        }
        return text(anchored(unit.pattern()), unit.examples());
    }

    static ObjectNode range(Unit unit) {
        String blank = "\\s*";
        String end = unit.pattern();
        // the left end may lend its unit from the right
        return text(
                anchored("(?:" + end + "|" + Unit.NUMBER.pattern() + ")" + blank + "\\.\\." + blank + end),
                "two dots between the ends, each as " + unit.examples());
    }

    static ObjectNode atFrequency(Unit unit) {
        return text(anchored(unit.pattern() + "\\s*@\\s*" + FREQUENCY), "85 @ 1 MHz");
    }

    private static ObjectNode text(String pattern, String examples) {
        return Definitions.object()
                .put("type", "string")
                .put("pattern", pattern)
                .put("$comment", examples);
    }

    private static String anchored(String pattern) {
        return "^\\s*(?:" + pattern + ")\\s*$";
    }
}
