package galena.build.winding;

import galena.build.quantity.BadQuantity;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.trade.wire.Metal;
import galena.trade.wire.Wire;
import galena.trade.wire.WireTable;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Wire as it stands on the reel.
 *
 * @param wire with its insulation
 * @param words "0.3 mm, 0.33 mm over enamel"
 * @param assumed what was taken for want of a measurement, or empty
 */
public record Reel(Wire wire, String words, String assumed) {
    private static final Pattern LITZ = Pattern.compile("\\s*(\\d{1,4})\\s*[x×*]\\s*(.+)");
    private static final Pattern GAUGE = Pattern.compile("\\s*(?i)(AWG|SWG)\\s*(\\d{1,2}|[0-9/]{1,5})\\s*");
    private static final double THINNEST = 0.02e-3;
    private static final double THICKEST = 10e-3;

    /**
     * Enamel of the usual single grade adds about 0.055 mm times the root of the bare diameter in millimetres: 0.02 mm on 0.1,
     * 0.04 mm on 0.5. Common practice.
     */
    private static final double ENAMEL = 0.055e-3;

    /** Round strands pack so that a bundle is this much wider than strands side by side would be in a square; common practice. */
    private static final double BUNDLE = 1.155;

    private static final double USUAL_LAY = 1.03;

    /** Silk round a bundle (m), both sides; common practice. */
    private static final double SERVING = 0.07e-3;

    /**
     * @param text "0.3 mm", "AWG 30", "SWG 28", or "20x0.07 mm" for litz
     * @param over diameter over insulation (m), as measured
     */
    public static Reel read(String text, OptionalDouble over) throws BadInputException {
        Matcher litz = LITZ.matcher(text), gauge = GAUGE.matcher(text);
        if (gauge.matches()) return solid(gauge(gauge.group(1), gauge.group(2), text), text.strip() + ", ", over);
        if (litz.matches()) return litz(Integer.parseInt(litz.group(1)), diameter(litz.group(2), text), over);
        return solid(diameter(text, text), "", over);
    }

    private static double diameter(String text, String whole) throws BadInputException {
        try {
            double value = Quantity.read(text, Unit.METRE).value();
            if (value >= THINNEST && value <= THICKEST) return value;
            throw bad(
                    '"' + whole + "\" is " + (value < THINNEST ? "thinner" : "thicker") + " than wire that is wound",
                    "Wire is between 0.02 mm and 10 mm thick.",
                    "Check the unit.");
        } catch (BadQuantity no) {
            throw bad(
                    no.found(),
                    "Wire is written as 0.3 mm, AWG 30, SWG 28, or 20x0.07 mm for litz.",
                    no.nearest().map(n -> "Nearest: " + n).orElse("Write its bare diameter."));
        }
    }

    private static double gauge(String system, String name, String whole) throws BadInputException {
        WireTable.Numbering numbering = WireTable.Numbering.valueOf(system.toUpperCase(Locale.ROOT));
        Optional<WireTable.Gauge> gauge = WireTable.find(numbering, name);
        if (gauge.isPresent()) return gauge.get().diameter();
        throw bad(
                '"' + whole.strip() + "\" is no size that is held", "Gauges are numbered.", "Write the bare diameter.");
    }

    private static Reel solid(double diameter, String name, OptionalDouble over) throws BadInputException {
        double outer = over.orElse(enamelled(diameter));
        if (outer < diameter) throw tooThin(outer, diameter);
        String words = name + millimetres(diameter) + ", " + millimetres(outer) + " over enamel";
        return new Reel(Wire.Solid.copper(diameter, outer), words, assumed(over, "single enamel"));
    }

    private static Reel litz(int strands, double strand, OptionalDouble over) throws BadInputException {
        if (strands < 2) throw bad("litz of one strand", "Litz has two strands or more.", "Write the diameter alone.");
        double bundle = BUNDLE * Math.sqrt(strands) * enamelled(strand);
        double outer = over.orElse(bundle + SERVING);
        if (outer < bundle) bundle = outer;
        if (bundle < strand * Math.sqrt(strands)) throw tooThin(outer, strand * Math.sqrt(strands));
        String words = "litz " + strands + " × " + millimetres(strand) + ", " + millimetres(outer) + " over all";
        return new Reel(
                new Wire.Litz(strands, strand, bundle, outer, USUAL_LAY, Metal.COPPER),
                words,
                assumed(over, "packing and serving"));
    }

    private static String assumed(OptionalDouble over, String what) {
        return over.isPresent()
                ? ""
                : "Thickness over insulation is taken from " + what + "; measure it and say --over.";
    }

    private static double enamelled(double diameter) {
        return diameter + ENAMEL * Math.sqrt(diameter / 1e-3);
    }

    private static BadInputException tooThin(double outer, double metal) {
        return new BadInputException(new Problem(
                new Place("--over", 1, 1),
                "",
                millimetres(outer) + " is thinner than its metal, " + millimetres(metal),
                "Over insulation a wire is thicker than bare.",
                "Measure it again."));
    }

    private static BadInputException bad(String found, String rule, String remedy) {
        return new BadInputException(new Problem(new Place("--wire", 1, 1), "", found, rule, remedy));
    }

    private static String millimetres(double metres) {
        return BigDecimal.valueOf(metres * 1e3)
                        .round(new MathContext(3))
                        .stripTrailingZeros()
                        .toPlainString() + " mm";
    }
}
