package galena.packet.sheet;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.spread.Drawn;
import galena.build.substitute.DeviceChoice;
import galena.build.substitute.Survey;
import galena.build.substitute.ValueRange;
import java.util.List;
import java.util.Locale;

/** What may stand instead, for programs. */
final class SubstituteJson {
    private SubstituteJson() {}

    static void add(Findings findings, ObjectNode top) {
        findings.outlook().substitutes().ifPresent(all -> write(all, top.putObject("substitutes")));
    }

    private static void write(Survey all, ObjectNode to) {
        copy(all.own(), to.putObject("own"));
        ArrayNode devices = to.putArray("devices");
        for (DeviceChoice choice : all.devices()) {
            ObjectNode one = devices.addObject();
            words(one.putArray("parts"), choice.parts());
            one.put("fitted", choice.fitted()).put("type", choice.type()).put("fits", choice.fits());
            choice.typical().ifPresent(drawn -> copy(drawn, one.putObject("typical")));
            words(one.putArray("failures"), choice.failures());
        }
        ArrayNode values = to.putArray("values");
        for (ValueRange range : all.values()) {
            ObjectNode one = values.addObject();
            one.put("part", range.part())
                    .put("value", range.value())
                    .put("unit", range.unit().symbol())
                    .put("low", range.low())
                    .put("high", range.high());
            range.pair().ifPresent(p -> one.putObject("pair")
                    .put("first", p.first())
                    .put("second", p.second())
                    .put("parallel", p.parallel())
                    .put("error", p.error()));
        }
    }

    private static void copy(Drawn drawn, ObjectNode to) {
        for (Drawn.Quantity quantity : Drawn.Quantity.values()) {
            Double value = drawn.values().get(quantity);
            if (value != null) to.put(quantity.name().toLowerCase(Locale.ROOT), value);
        }
    }

    private static void words(ArrayNode to, List<String> words) {
        words.forEach(to::add);
    }
}
