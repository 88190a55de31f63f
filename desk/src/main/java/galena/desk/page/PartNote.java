package galena.desk.page;

import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.PartEntry;
import galena.build.folder.Supply;
import galena.build.guard.PartMoves;
import galena.build.guard.PartMoves.Move;
import galena.build.predict.Running;
import galena.build.quantity.Unit;
import galena.build.source.Node;
import galena.build.source.Node.Entry;
import galena.build.source.Node.Mapping;
import galena.build.source.Node.Scalar;
import galena.desk.writing.Json;
import galena.desk.writing.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The margin note of one part or condition: its values, their reason, and what they do to the carrier. As JSON. */
final class PartNote {
    /** The condition that every build has. */
    static final String TEMPERATURE = "temperature";

    private PartNote() {}

    /** @param running solved carrier; without one the note tells no moves */
    static Optional<String> of(BuildFolder folder, Optional<Running> running, String name) {
        Build build = folder.build();
        if (name.equals(TEMPERATURE))
            return Optional.of(condition(name, running.map(r -> List.of(new PartMoves(r).heat()))));
        if (name.equals(Supply.NAME))
            return build.supply()
                    .map(s -> condition(
                            name,
                            running.map(
                                    r -> new PartMoves(r).supply().map(List::of).orElse(List.of()))));
        return build.part(name).map(part -> part(build, part, running));
    }

    private static String condition(String name, Optional<List<Move>> moves) {
        return Json.line("note", json -> {
            json.text("name", name);
            moves(json, moves.orElse(List.of()));
        });
    }

    private static String part(Build build, PartEntry part, Optional<Running> running) {
        Reasons reasons = new Reasons(build.file());
        return Json.line("note", json -> {
            json.text("name", part.name()).text("noun", part.kind().noun()).text("label", part.label());
            json.text("reason", reasons.beside(part.place()).orElse(""));
            json.text("group", reasons.above(part.place()).orElse(""));
            json.text("place", part.place().toString());
            json.each("rows", rows(build, part), row -> json.text("path", row.path())
                    .text("label", row.label())
                    .text("text", row.text())
                    .truth("main", row.label().equals(part.kind().key().replace('_', ' '))));
            json.each("pins", part.pins().entrySet(), pin -> json.text("pin", pin.getKey())
                    .text("net", pin.getValue()));
            json.text("tolerance", tolerance(part));
            Preferred preferred = Preferred.of(part);
            json.text("below", preferred.below().orElse(""))
                    .text("above", preferred.above().orElse(""));
            moves(json, running.map(r -> moves(part, r)).orElse(List.of()));
        });
    }

    private record Row(String path, String label, String text) {}

    /** Every value but the pins, in the order of the file. */
    private static List<Row> rows(Build build, PartEntry part) {
        List<Row> rows = new ArrayList<>();
        Optional<Node> node = build.top().find(part.path());
        if (node.isEmpty() || !(node.get() instanceof Mapping mapping)) return rows;
        for (Entry entry : mapping.entries()) {
            String key = entry.key().text();
            if (part.kind().pins().contains(key)) continue;
            if (entry.value() instanceof Scalar s) rows.add(new Row(s.path(), key.replace('_', ' '), s.text()));
            if (entry.value() instanceof Mapping group)
                for (Entry inner : group.entries())
                    if (inner.value() instanceof Scalar s)
                        rows.add(new Row(s.path(), inner.key().text().replace('_', ' '), s.text()));
        }
        return rows;
    }

    private static String tolerance(PartEntry part) {
        if (part.values().has("tolerance")) return "";
        return part.kind().isPassive()
                ? "taken as ±" + Words.percent(part.kind().usualTolerance()) + ", as none is written"
                : "";
    }

    private static List<Move> moves(PartEntry part, Running running) {
        PartMoves moves = new PartMoves(running);
        List<Move> all = new ArrayList<>();
        if (part.isAdjustable()) all.add(moves.travel(part.name()));
        all.addAll(moves.of(part.name()));
        return all;
    }

    private static void moves(Json json, List<Move> moves) {
        json.each("moves", moves, m -> {
            json.text("what", m.what()).text("change", m.change());
            json.number("hertz", m.carrier()).text("carrier", signed(m.carrier(), Unit.HERTZ, 1e-3));
            json.text("output", decibels(m.output()));
            json.text("second", decibels(m.harmonics().get(0)))
                    .text("third", decibels(m.harmonics().get(1)));
            json.text("current", signed(m.supply(), Unit.AMPERE, 1e-9));
        });
    }

    private static String signed(double value, Unit unit, double nothing) {
        if (Math.abs(value) < nothing) return "none";
        return (value < 0 ? "−" : "+") + Words.number(Math.abs(value), unit, 3);
    }

    private static String decibels(double value) {
        String printed = String.format(Locale.ROOT, "%+.3f", value);
        return (printed.matches("[-+]0\\.000") ? "0" : printed.replace('-', '−')) + " dB";
    }
}
