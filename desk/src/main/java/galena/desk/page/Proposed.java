package galena.desk.page;

import galena.build.attempt.Neighbour;
import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.predict.Progress;
import galena.build.propose.GivesWay;
import galena.build.propose.Proposal;
import galena.build.propose.Proposal.Change;
import galena.build.propose.Proposal.Verdict;
import galena.build.propose.Propose;
import galena.build.propose.ProposeAnswer;
import galena.build.propose.Wish;
import galena.build.source.BadInputException;
import galena.build.source.Saver;
import galena.build.source.SourceFile;
import galena.desk.writing.ProposeText;
import galena.desk.writing.Words;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A proposal on a slip. The build goes into a folder of its own beside the present one; nothing is overwritten. */
final class Proposed {
    static final String OWN = "build";
    private static final String ALL = "patterns";
    private static final String FOLDER = "proposed";
    private static final int MOST_BESIDE = 100;
    private static final double NEARLY_ALL = 0.95;

    private Proposed() {}

    /** @param from "build" to change the build as little as it takes, "patterns" to look at all of them, or one pattern's name */
    static Slip of(BuildFolder folder, String from, Progress progress) throws BadInputException, IOException {
        Wish own = Wish.open(folder.folder());
        Wish wish = from.equals(ALL)
                ? new Wish(own.folder(), own.build(), false, own.intentText(), own.supplyText(), own.drawer())
                : own;
        Propose.Request usual = Propose.Request.USUAL;
        Optional<String> pattern = from.equals(ALL) || from.equals(OWN) ? Optional.empty() : Optional.of(from);
        ProposeAnswer answer = Propose.of(
                wish,
                new Propose.Request(pattern, usual.seed(), usual.count(), usual.set(), usual.surroundings()),
                progress);
        if (answer instanceof ProposeAnswer.None none)
            return new Slip(
                    "Propose: nothing meets it",
                    "No proposal: " + none.reason(),
                    considered(none.considered()),
                    List.of(),
                    List.of(),
                    List.of("Nothing was written."));
        Proposal proposal = (Proposal) answer;
        boolean asItIs = proposal.pattern().isEmpty() && proposal.changes().isEmpty();
        Slip slip = slip(proposal, asItIs);
        return asItIs ? slip : slip.proposing(write(wish, proposal));
    }

    private static String write(Wish wish, Proposal proposal) throws BadInputException, IOException {
        for (int k = 1; k < MOST_BESIDE; k++) {
            String name = k == 1 ? FOLDER : FOLDER + "-" + k;
            Path target = wish.folder().resolve(name);
            if (Files.exists(target)) continue;
            byte[] text = proposal.text().getBytes(StandardCharsets.UTF_8);
            Saver.create(SourceFile.of(Layout.BUILD.in(target), Layout.BUILD.place(), text));
            Path drawer = Layout.DRAWER.in(wish.folder());
            if (Files.exists(drawer)) Files.copy(drawer, Layout.DRAWER.in(target));
            return name;
        }
        throw Typed.bad(
                FOLDER,
                "a hundred proposals are in this folder already",
                "Each has a folder of its own.",
                Optional.of("Take some away."));
    }

    private static Slip slip(Proposal proposal, boolean asItIs) {
        List<Slip.Table> tables = new ArrayList<>();
        if (!proposal.givesWay().isEmpty()) tables.add(givesWay(proposal.givesWay()));
        if (!proposal.changes().isEmpty())
            tables.add(changes(
                    proposal.pattern().isPresent() ? "Changed from the rules of thumb" : "What it changes",
                    proposal.changes()));
        tables.add(verdicts(proposal.verdicts()));
        tables.add(values(proposal.values()));
        tables.addAll(considered(proposal.considered()));
        List<String> notes = new ArrayList<>(proposal.notes());
        if (!proposal.givesWay().isEmpty())
            notes.add(
                    0,
                    proposal.eased() > 0
                            ? "With the intent eased so, " + Words.percent(proposal.eased())
                                    + " of the copies meet it: the nearest intent that this build keeps."
                            : "No eased intent was found that this build keeps; another supply, aerial or device may.");
        notes.add("Drawn with seed " + proposal.seed() + ", so that the same copies can be called back.");
        return new Slip(title(proposal, asItIs), lead(proposal, asItIs), tables, List.of(), List.of(), notes);
    }

    private static String title(Proposal proposal, boolean asItIs) {
        if (asItIs) return "Propose: the build as it is";
        return proposal.pattern().map(p -> "Propose: " + p).orElse("Propose: the build, changed");
    }

    private static String lead(Proposal proposal, boolean asItIs) {
        String copies = Words.withInterval(proposal.yield()) + " of " + proposal.count()
                + " copies meet every line that copies are held to, over tolerances, devices, −10 to 50 °C and the battery"
                + " from fresh to flat.";
        if (!proposal.meets()) return "Not all of the intent can be met: see what gives way. " + copies;
        return asItIs ? "Nothing has to be changed: " + copies : "It meets the intent: " + copies;
    }

    private static Slip.Table givesWay(List<GivesWay> lines) {
        return new Slip.Table(
                "What gives way",
                List.of("line", "wanted", "possible", "why"),
                lines.stream()
                        .map(g -> List.of(g.line().toString(), g.wanted(), g.possible(), g.why()))
                        .toList());
    }

    private static Slip.Table changes(String title, List<Change> changes) {
        return new Slip.Table(
                title,
                List.of("part", "from", "to", "what that buys", "copies that meet the intent"),
                changes.stream()
                        .map(c -> List.of(
                                c.part(),
                                c.from(),
                                c.to(),
                                c.buys(),
                                c.before() == 0 && c.after() == 0
                                        ? "not counted"
                                        : Words.percent(c.before()) + " → " + Words.percent(c.after())))
                        .toList());
    }

    private static Slip.Table verdicts(List<Verdict> verdicts) {
        return new Slip.Table(
                "Against the intent",
                List.of("line", "", "wanted", "found"),
                verdicts.stream()
                        .map(v -> List.of(
                                v.line().toString(),
                                meets(v) ? "✓\u00a0met" : "✗\u00a0missed",
                                v.wanted().replace('-', '−'),
                                found(v)))
                        .toList());
    }

    private static boolean meets(Verdict v) {
        return v.ofCopies() ? v.meeting() >= NEARLY_ALL : v.meeting() > 0;
    }

    private static String found(Verdict v) {
        String judged = v.ofCopies() ? "; " + Words.percent(v.meeting()) + " of the copies" : ", typical parts";
        return ProposeText.found(v) + judged;
    }

    private static Slip.Table values(List<Proposal.Value> values) {
        return new Slip.Table(
                "Its values, each with its reason and what the next ones would do",
                List.of("part", "value", "reason", "next up", "next down"),
                values.stream()
                        .map(v -> List.of(v.part(), v.value(), v.reason(), step(v.up()), step(v.down())))
                        .toList());
    }

    private static String step(Optional<Neighbour> neighbour) {
        return neighbour.map(n -> n.to() + ": " + n.effects()).orElse("");
    }

    private static List<Slip.Table> considered(List<Proposal.Considered> considered) {
        if (considered.size() < 2) return List.of();
        return List.of(new Slip.Table(
                "Looked at",
                List.of("pattern", "copies that meet it", "outcome"),
                considered.stream()
                        .map(c -> List.of(
                                c.pattern(), c.yield().map(Words::percent).orElse("–"), c.outcome()))
                        .toList()));
    }
}
