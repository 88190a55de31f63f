package galena.packet.sheet;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.bench.log.Beside;
import galena.build.figure.Figure;
import galena.build.predict.OutputSweep;
import galena.build.predict.PointReading;
import galena.build.predict.Prediction.Judgement;
import galena.build.spread.Drawn;
import galena.build.winding.WindingPlan;
import galena.packet.sheet.PartsList.Line;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Locale;

/**
 * The packet's facts for programs: version 1, shape in {@code packet.json} among the published schemas. Figures are {value, unit,
 * low, high, basis, quantity, at} in SI units.
 */
public final class PacketJson {
    private PacketJson() {}

    public static String of(Findings findings) {
        ObjectNode top = JsonNodeFactory.instance.objectNode();
        top.put("galena", 1).put("kind", "packet");
        top.put("oscillates", findings.oscillation().isPresent());
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
        for (Line line : PartsList.of(findings))
            parts.addObject()
                    .put("part", line.reference())
                    .put("value", line.value())
                    .put("tolerance", line.tolerance())
                    .put("type", line.type())
                    .put("why", line.why())
                    .put("instead", line.instead());
        ArrayNode rest = top.putArray("standing_voltages");
        findings.prediction().rest().voltages().forEach(f -> rest.add(figure(f)));
        readings(findings, top);
        windings(findings, top);
        FaultJson.add(findings, top);
        SubstituteJson.add(findings, top);
        results(findings, top);
        findings.outlook().spread().ifPresent(report -> {
            ObjectNode copies = top.putObject("copies");
            copies.put("count", report.count()).set("yield", figure(report.yield()));
            ObjectNode windows = copies.putObject("windows");
            for (Drawn.Quantity q : Drawn.Quantity.values())
                if (report.windows().containsKey(q))
                    windows.set(
                            q.name().toLowerCase(Locale.ROOT),
                            figure(report.windows().get(q)));
        });
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

    private static void windings(Findings findings, ObjectNode top) {
        ArrayNode windings = top.putArray("windings");
        for (WindingPlan plan : findings.windings()) {
            ObjectNode winding = windings.addObject();
            winding.put("coil", plan.part())
                    .put("former", plan.former())
                    .put("proposed", !plan.asBuilt())
                    .put("wire", plan.coil().wire())
                    .put("turns", plan.turns())
                    .put("layers", plan.coil().layers())
                    .put("length_m", plan.coil().windingLength())
                    .put("wire_length_m", plan.coil().wireLength());
            winding.set("inductance", figure(plan.coil().inductance()));
            winding.set("q", figure(plan.coil().q()));
        }
    }

    private static void results(Findings findings, ObjectNode top) {
        ArrayNode results = top.putArray("results");
        for (Beside beside : findings.results()) {
            ObjectNode result = results.addObject();
            result.put("reading", beside.reading().what().inWords())
                    .put("value", beside.reading().value().value())
                    .put("unit", beside.reading().value().unit().symbol());
            beside.reading().uncertainty().ifPresent(u -> result.put("uncertainty", u.value()));
            beside.reading().at().ifPresent(at -> result.put("at", at));
            beside.reading().when().ifPresent(when -> result.put("when", when));
            result.set("predicted", figure(beside.predicted()));
            beside.agrees().ifPresent(fits -> result.put("fits", fits));
        }
    }

    static ObjectNode figure(Figure figure) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        if (figure instanceof Figure.Missing missing)
            return node.put("missing", missing.quantity()).put("reason", missing.reason());
        Figure.Known k = (Figure.Known) figure;
        return node.put("value", k.value())
                .put("unit", unit(k))
                .put("low", k.low())
                .put("high", k.high())
                .put("basis", k.basis())
                .put("quantity", k.quantity())
                .put("at", k.at());
    }

    /** The plain SI unit, 1 for shares, so that no reader has to know a prefix. */
    private static String unit(Figure.Known known) {
        return switch (known.unit()) {
            case FRACTION, NUMBER, RATIO -> "1";
            default -> known.unit().symbol();
        };
    }

    private static String written(ObjectNode top) {
        try {
            return new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(top) + "\n";
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible); // a tree always has a text
        }
    }
}
