package galena.desk.writing;

import galena.bench.reconcile.Reconciliation;
import galena.bench.reconcile.Reconciliation.Left;
import galena.bench.reconcile.Reconciliation.Standing;
import galena.bench.reconcile.Reconciliation.Taken;
import galena.build.quantity.Quantity;
import galena.desk.console.Terminal;
import galena.desk.console.Terminal.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** A reconciliation as a page for a terminal: the explanation first, then readings, then unknowns. */
public final class ReconcileText {
    private static final double FITS = 2;
    private static final double HARDLY = 3;

    private ReconcileText() {}

    /** @param all whether unknowns of which nothing new is known have rows too */
    public static void print(Reconciliation found, boolean all, Terminal terminal) {
        Page page = new Page(terminal);
        page.title(found.build(), verdict(found.verdict()));
        page.heading("What the readings say together");
        found.words().forEach(page::line);
        if (!found.readings().isEmpty()) {
            page.heading("Readings");
            readings(page, found.readings());
        }
        if (!found.unknowns().isEmpty()) {
            page.heading("Unknowns");
            unknowns(page, found.unknowns(), all);
        }
        notes(page, found);
        page.print();
    }

    /** For a demo or a summary: the words and nothing else. */
    public static void printSummary(Reconciliation found, Terminal terminal) {
        Page page = new Page(terminal);
        page.heading("Reconciled (invented readings)");
        found.words().forEach(page::line);
        page.print();
    }

    private static String verdict(Reconciliation.Verdict verdict) {
        return switch (verdict) {
            case EXPLAINED -> "reconciled";
            case WRONG_READING -> "reconciled but for a reading";
            case WRONG_PART -> "a part is wrong";
            case UNEXPLAINED -> "not explained";
            case TOO_FEW -> "too few readings";
        };
    }

    private static void readings(Page page, List<Taken> readings) {
        Page.Table table = page.table();
        table.row("", "", "read", "predicted", "fitted", "off, σ");
        for (Taken taken : readings) {
            double error = Math.abs(taken.errorAfter());
            Tone tone = taken.wrong() || error > HARDLY ? Tone.WARNING : Tone.GOOD;
            String word = taken.wrong() ? "wrong" : error <= FITS ? "fits" : error <= HARDLY ? "hardly" : "apart";
            table.row(
                    tone,
                    word,
                    taken.reading().what().inWords()
                            + taken.reading().at().map(at -> " " + at).orElse(""),
                    taken.reading().value().text().replace('-', '−'),
                    Words.alone(taken.before()),
                    Words.alone(taken.after()),
                    number(taken.errorAfter()));
        }
        table.end();
        String set = readings.stream()
                .map(t -> t.reading().circumstances().set())
                .distinct()
                .map(ReconcileText::settings)
                .filter(s -> !s.isEmpty())
                .collect(Collectors.joining("; "));
        if (!set.isEmpty()) page.line("Taken with " + set + ".");
    }

    private static String settings(java.util.Map<String, Quantity> set) {
        return set.entrySet().stream()
                .map(e -> e.getKey() + " " + e.getValue().text())
                .collect(Collectors.joining(", "));
    }

    private static String number(double deviations) {
        return String.format(Locale.ROOT, "%.1f", deviations).replace('-', '−');
    }

    private static void unknowns(Page page, List<Left> unknowns, boolean all) {
        Page.Table table = page.table();
        table.row("", "", "before", "now");
        int hidden = 0;
        for (Left left : unknowns) {
            if (left.standing() == Standing.AS_BEFORE && !all) {
                hidden++;
                continue;
            }
            Tone tone = left.standing() == Standing.FOUND ? Tone.GOOD : Tone.FAINT;
            table.row(
                    tone,
                    word(left.standing()),
                    left.after().quantity(),
                    Words.interval(left.before()),
                    Words.withInterval(left.after()));
        }
        table.end();
        if (hidden > 0)
            page.line("Of " + hidden
                    + " more nothing new is known: they only return their tolerance (--all shows them).");
    }

    private static String word(Standing standing) {
        return switch (standing) {
            case FOUND -> "found";
            case NARROWED -> "narrower";
            case AS_BEFORE -> "as before";
        };
    }

    private static void notes(Page page, Reconciliation found) {
        List<String> notes = new ArrayList<>(found.together());
        if (!found.unused().isEmpty()) notes.add("Not used: " + String.join("; ", found.unused()) + ".");
        found.calibration()
                .ifPresent(c -> notes.add("--accept lays what was found over every prediction; --drop takes it away."));
        if (notes.isEmpty()) return;
        page.heading("Notes");
        notes.forEach(note -> page.line(note.replaceAll("(?<![\\w])-(?=\\d)", "−")));
    }

    /** What was found or narrowed, a line each, for the head of a file. */
    public static List<String> lines(Reconciliation found) {
        return found.unknowns().stream()
                .filter(left -> left.standing() != Standing.AS_BEFORE)
                .map(left -> left.after().quantity() + ": " + Words.withInterval(left.after()))
                .toList();
    }
}
