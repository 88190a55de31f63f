package galena.desk.writing;

import galena.build.figure.Figure;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import java.util.Locale;

/** Turns of phrase that several pages share. */
final class Words {
    private Words() {}

    /** "998.6 kHz (985 kHz to 1.012 MHz)"; a reason where there is no number. */
    static String withInterval(Figure figure) {
        if (!(figure instanceof Figure.Known known) || known.low() == known.high()) return figure.text();
        return known.text() + " (" + known.interval() + ")";
    }

    /** The number without its unit: for columns whose head names the unit. */
    static String bare(Figure.Known known) {
        return known.text().replaceFirst(" .*", "");
    }

    /** "40 %", or "40.5 %" where a tenth matters. */
    static String percent(double share) {
        return Engineering.print(share, Unit.FRACTION, Math.abs(share) < 0.0995 ? 2 : 3).replaceFirst("\\.0+ ", " ");
    }

    /** "3e-9" */
    static String power(double small) {
        return String.format(Locale.ROOT, "%.0e", small).replace("e-0", "e-");
    }
}
