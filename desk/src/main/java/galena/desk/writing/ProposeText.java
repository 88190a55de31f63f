package galena.desk.writing;

import galena.build.figure.Figure;
import galena.build.propose.GivesWay;
import galena.build.propose.Proposal;
import galena.build.propose.Proposal.Change;
import galena.build.propose.Proposal.Considered;
import galena.build.propose.Proposal.Value;
import galena.build.propose.Proposal.Verdict;
import galena.build.propose.ProposeAnswer;
import galena.desk.console.Terminal;
import galena.desk.console.Terminal.Tone;
import java.util.List;
import java.util.Optional;

/** A proposal as a page for a terminal: how it stands to the intent first, then its values with their neighbours. */
public final class ProposeText {
    private static final double NEARLY_ALL = 0.95;

    private final Page page;

    private ProposeText(Terminal terminal) {
        page = new Page(terminal);
    }

    /** @param file where the build was written */
    public static void print(String name, Proposal proposal, String file, Terminal terminal) {
        ProposeText text = new ProposeText(terminal);
        text.page.title(
                "Proposal for " + name,
                proposal.pattern().map(p -> "pattern " + p).orElse("changes of the build given"));
        text.intent(proposal);
        if (!proposal.meets()) text.givesWay(proposal);
        text.changes(proposal);
        text.values(proposal.values());
        text.considered(proposal.considered());
        text.page.heading("Notes");
        proposal.notes().forEach(text.page::line);
        text.page.print();
        terminal.remark("written to " + file);
    }

    /** Why there is none. */
    public static void print(ProposeAnswer.None none, Terminal terminal) {
        ProposeText text = new ProposeText(terminal);
        text.page.title("No proposal: " + none.reason(), "");
        text.considered(none.considered());
        text.page.print();
    }

    private void intent(Proposal proposal) {
        page.heading("Against the intent");
        page.line(Words.withInterval(proposal.yield()) + " of " + proposal.count()
                + " copies meet every line that copies are held to (seed " + proposal.seed() + ").");
        Page.Table table = page.table().folding();
        for (Verdict v : proposal.verdicts()) {
            boolean meets = v.ofCopies() ? v.meeting() >= NEARLY_ALL : v.meeting() > 0;
            String share = v.ofCopies() && v.meeting() < 1 ? "; " + Words.percent(v.meeting()) + " of the copies" : "";
            table.row(
                    meets ? Tone.GOOD : Tone.BAD,
                    meets ? "meets" : "misses",
                    v.line().toString(),
                    "wanted " + v.wanted() + "; found " + found(v) + share);
        }
        table.end();
    }

    /** What was found of a line, and what it is a figure of. */
    public static String found(Verdict v) {
        return shown(v.found()) + what(v);
    }

    private static String shown(Figure figure) {
        return figure.text().startsWith("not known")
                ? figure.text()
                : figure instanceof Figure.Known known && known.low() == known.high()
                        ? Words.number(known.value(), known.unit(), 2)
                        : Words.withInterval(figure);
    }

    private static String what(Verdict v) {
        return switch (v.line()) {
            case STARTS -> " margin";
            case ON_CHANNEL -> " of the trimmer's travel";
            case DEPTH -> " distortion there";
            case LEVEL -> " with the preset fully up";
            case LIMIT -> " of margin";
            default -> "";
        };
    }

    private void givesWay(Proposal proposal) {
        page.heading("What gives way");
        Page.Table table = page.table().folding();
        for (GivesWay g : proposal.givesWay())
            table.row(g.line().toString(), g.possible() + " instead of " + g.wanted() + "; " + g.why());
        table.end();
        if (proposal.eased() > 0)
            page.line("With the intent eased so, " + Words.percent(proposal.eased())
                    + " of the copies meet it: the nearest intent that this build keeps.");
        else page.line("No eased intent was found that this build keeps; another supply, aerial or device may.");
    }

    private void changes(Proposal proposal) {
        if (proposal.changes().isEmpty()) {
            if (proposal.pattern().isEmpty()) {
                page.heading("Changes");
                page.line("None: the build stands as it is.");
            }
            return;
        }
        page.heading(proposal.pattern().isPresent() ? "Changed from the rules of thumb" : "Changes");
        Page.Table table = page.table().folding();
        for (Change c : proposal.changes()) {
            String yield = c.before() == 0 && c.after() == 0
                    ? ""
                    : "; copies " + Words.percent(c.before()) + " → " + Words.percent(c.after());
            table.row(c.part(), c.from() + " → " + c.to(), c.buys() + yield);
        }
        table.end();
    }

    private void values(List<Value> values) {
        page.heading("Values, and what the next one up and down would do");
        Page.Table table = page.table().folding();
        for (Value v : values) {
            table.row(v.part(), v.value(), v.reason());
            step(table, v.up());
            step(table, v.down());
        }
        table.end();
    }

    private static void step(Page.Table table, Optional<galena.build.attempt.Neighbour> neighbour) {
        neighbour.ifPresent(n -> table.row(
                "",
                "  " + n.to(),
                n.effects() + (n.yield() < NEARLY_ALL ? "; " + Words.percent(n.yield()) + " of the copies left" : "")));
    }

    private void considered(List<Considered> considered) {
        if (considered.size() < 2) return;
        page.heading("Looked at");
        Page.Table table = page.table().folding();
        for (Considered c : considered)
            table.row(c.pattern(), c.yield().map(Words::percent).orElse("–"), c.outcome());
        table.end();
    }
}
