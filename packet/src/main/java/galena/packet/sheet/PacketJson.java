package galena.packet.sheet;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.figure.Figure;
import galena.build.predict.OutputSweep;
import galena.build.predict.PointReading;
import galena.build.predict.Prediction.Judgement;
import galena.packet.sheet.PartsList.Line;
import java.io.IOException;
import java.io.UncheckedIOException;

/** The packet's facts for programs: version 1. Figures are {value, unit, low, high, basis, quantity, at} in SI units. */
public final class PacketJson {
    private PacketJson() {}

    public static String of(Findings findings) {
        ObjectNode top = JsonNodeFactory.instance.objectNode();
        top.put("packet", 1);
        top.put("name", findings.prediction().name());
        top.put("digest", findings.prediction().digest());
        ArrayNode verdicts = top.putArray("verdicts");
        for (Judgement j : findings.prediction().judgements()) {
            ObjectNode verdict = verdicts.addObject();
            verdict.put("item", j.item())
                    .put("wanted", j.wanted())
                    .put("outcome", j.outcome().toString());
            verdict.set("found", figure(j.found()));
        }
        ArrayNode parts = top.putArray("parts");
        for (Line line : PartsList.of(findings.build(), findings.expected().guard()))
            parts.addObject()
                    .put("part", line.reference())
                    .put("value", line.value())
                    .put("tolerance", line.tolerance())
                    .put("type", line.type())
                    .put("why", line.why());
        ArrayNode rest = top.putArray("standing_voltages");
        findings.prediction().rest().voltages().forEach(f -> rest.add(figure(f)));
        readings(findings, top);
        return written(top);
    }

    private static void readings(Findings findings, ObjectNode top) {
        ArrayNode points = top.putArray("readings");
        for (PointReading p : findings.expected().points()) {
            ObjectNode point = points.addObject();
            point.put("point", p.point().name())
                    .put("net", p.point().at())
                    .put("against", p.point().to());
            p.point().probe().ifPresent(probe -> point.put("probe", probe.name()));
            point.set("carrier", figure(p.carrier()));
            point.set("peak", figure(p.peak()));
            point.set("mean", figure(p.mean()));
        }
        ArrayNode sweeps = top.putArray("adjustments");
        for (OutputSweep s : findings.expected().sweeps()) {
            ObjectNode sweep = sweeps.addObject();
            sweep.put("part", s.part()).put("set", s.set()).put("output_coil", s.coil());
            ArrayNode at = sweep.putArray("points");
            for (OutputSweep.Point p : s.points())
                at.addObject()
                        .put("position", p.position())
                        .put("carrier_hz", p.carrier())
                        .put("output_a", p.current())
                        .put("supply_a", p.supply());
        }
    }

    private static ObjectNode figure(Figure figure) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        if (figure instanceof Figure.Missing missing)
            return node.put("missing", missing.quantity()).put("reason", missing.reason());
        Figure.Known k = (Figure.Known) figure;
        return node.put("value", k.value())
                .put("unit", k.unit().symbol())
                .put("low", k.low())
                .put("high", k.high())
                .put("basis", k.basis())
                .put("quantity", k.quantity())
                .put("at", k.at());
    }

    private static String written(ObjectNode top) {
        try {
            return new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(top) + "\n";
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible); // a tree always has a text
        }
    }
}
