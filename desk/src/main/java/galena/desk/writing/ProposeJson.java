package galena.desk.writing;

import galena.build.attempt.Neighbour;
import galena.build.propose.Proposal;
import galena.build.propose.ProposeAnswer;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A proposal as JSON; the shape is {@code galena/schema/proposal.json}. */
public final class ProposeJson {
    private ProposeJson() {}

    /** @param file where the build was written */
    public static String of(Proposal p, String file) {
        return Json.document("proposal", json -> {
            p.pattern().ifPresent(name -> json.text("pattern", name));
            json.text("file", file)
                    .truth("meets", p.meets())
                    .figure("yield", p.yield())
                    .number("count", p.count())
                    .text("seed", Long.toString(p.seed()));
            json.each("lines", p.verdicts(), v -> json.text(
                            "line", v.line().name().toLowerCase(Locale.ROOT))
                    .text("wanted", v.wanted())
                    .figure("found", v.found())
                    .number("meeting", v.meeting())
                    .truth("copies", v.ofCopies()));
            json.each("values", p.values(), v -> {
                json.text("part", v.part()).text("value", v.value()).text("reason", v.reason());
                step(json, "up", v.up());
                step(json, "down", v.down());
            });
            json.each("changes", p.changes(), c -> json.text("part", c.part())
                    .text("from", c.from())
                    .text("to", c.to())
                    .text("buys", c.buys())
                    .number("before", c.before())
                    .number("after", c.after()));
            json.each("gives_way", p.givesWay(), g -> json.text(
                            "line", g.line().name().toLowerCase(Locale.ROOT))
                    .text("wanted", g.wanted())
                    .text("possible", g.possible())
                    .text("why", g.why()));
            if (!p.meets()) json.number("eased", p.eased());
            considered(json, p.considered());
            json.texts("notes", p.notes());
        });
    }

    /** Why there is none; the shape is the same file's. */
    public static String of(ProposeAnswer.None none) {
        return Json.document("no proposal", json -> {
            json.text("reason", none.reason());
            considered(json, none.considered());
        });
    }

    private static void step(Json json, String key, Optional<Neighbour> neighbour) {
        neighbour.ifPresent(n -> json.object(
                key, () -> json.text("to", n.to()).text("effects", n.effects()).number("yield", n.yield())));
    }

    private static void considered(Json json, List<Proposal.Considered> considered) {
        json.each("considered", considered, c -> {
            json.text("pattern", c.pattern()).text("outcome", c.outcome());
            c.yield().ifPresent(y -> json.number("yield", y));
        });
    }
}
