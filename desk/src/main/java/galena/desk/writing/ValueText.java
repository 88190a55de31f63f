package galena.desk.writing;

import galena.build.preferred.Marking;
import galena.build.preferred.ValueSheet;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.desk.console.Terminal;
import galena.trade.preferred.TwoParts;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/** Values and markings as pages for a terminal. */
public final class ValueText {
    private static final int FIGURES = 4;

    private ValueText() {}

    /** @param looked whether a drawer was looked into */
    public static void print(ValueSheet sheet, boolean looked, Terminal terminal) {
        Page page = new Page(terminal);
        Unit unit = sheet.component().unit();
        page.title(
                "Nearest to " + plain(sheet.wanted(), unit), sheet.component().word());
        Page.Table table = page.table();
        boolean bands = sheet.rows().stream().anyMatch(r -> !code(r, "bands").isEmpty());
        boolean digits = sheet.component() != galena.build.preferred.Component.COIL;
        table.row(
                "series",
                "nearest",
                "off by",
                "lower",
                "higher",
                "letters",
                digits ? "digits" : "",
                bands ? "bands" : "");
        for (ValueSheet.Row row : sheet.rows())
            table.row(
                    row.series() + " (" + Words.percent(row.tolerance()) + ")",
                    plain(row.value(), unit),
                    share(row.error()),
                    plain(row.below(), unit),
                    plain(row.above(), unit),
                    code(row, "letters"),
                    code(row, "digits"),
                    code(row, "bands"));
        table.end();
        if (looked) drawer(page, sheet, unit);
        page.line("Series by IEC 60063, codes by IEC 60062; colours and tolerance letters are recalled, unverified.");
        page.print();
    }

    private static void drawer(Page page, ValueSheet sheet, Unit unit) {
        page.heading("Out of the drawer");
        if (sheet.made().isEmpty()) {
            page.line("It lists no " + sheet.component().word() + ".");
            return;
        }
        Page.Table table = page.table();
        table.row("", "makes", "off by", "tolerance");
        for (TwoParts.Combination c : sheet.made())
            table.row(words(c, unit), plain(c.value(), unit), share(c.error()), "±" + Words.percent(c.tolerance()));
        table.end();
        page.line("Each value listed is taken to be there more than once, with the usual tolerance of its kind.");
    }

    private static String words(TwoParts.Combination c, Unit unit) {
        String first = plain(c.first().value(), unit), second = plain(c.second().value(), unit);
        return switch (c.joined()) {
            case ALONE -> first + " alone";
            case SERIES -> first + " in series with " + second;
            case PARALLEL -> first + " parallel to " + second;
        };
    }

    public static void print(Marking marking, Terminal terminal) {
        Page page = new Page(terminal);
        page.title("\"" + marking.mark() + "\" reads", marking.readings().size() > 1 ? "several ways" : "");
        Page.Table table = page.table();
        for (Marking.Reading r : marking.readings()) {
            Unit unit = r.component().unit();
            String limits = r.low().isPresent()
                    ? plain(r.low().getAsDouble(), unit) + " to "
                            + plain(r.high().orElseThrow(), unit)
                    : "";
            table.row("on a " + r.component().word(), plain(r.value(), unit), limits, r.how());
        }
        table.end();
        if (marking.readings().size() > 1) page.line("The part tells which; --part narrows it.");
        page.line("Codes by IEC 60062; colours and tolerance letters are recalled, unverified.");
        page.print();
    }

    private static String code(ValueSheet.Row row, String how) {
        return row.codes().stream()
                .filter(c -> c.how().equals(how))
                .map(ValueSheet.Code::text)
                .findFirst()
                .orElse("");
    }

    /** As it is spoken: no more figures than it has, four at most. */
    private static String plain(double value, Unit unit) {
        return Engineering.exact(
                new BigDecimal(value).round(new MathContext(FIGURES)).doubleValue(), unit);
    }

    private static String share(double error) {
        if (Math.abs(error) < 5e-6) return "exact";
        return String.format(Locale.ROOT, Math.abs(error) < 0.01 ? "%+.2f %%" : "%+.1f %%", 100 * error)
                .replace("-", "−");
    }
}
