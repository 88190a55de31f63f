package galena.build.winding;

import galena.build.figure.Figure;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.trade.coil.FlatSpiral;
import galena.trade.coil.Former;
import galena.trade.coil.Interval;
import galena.trade.coil.Losses;
import galena.trade.coil.RectangularFrame;
import galena.trade.coil.SelfCapacitance;
import galena.trade.coil.SingleLayer;
import galena.trade.coil.Winding;
import galena.trade.coil.WindingDesign;
import galena.trade.coil.WindingSheet;
import galena.trade.ferrite.Material;
import galena.trade.ferrite.RodCoil;
import galena.trade.wire.OutOfRange;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Designs one coil.
 *
 * @param shape to wind on
 * @param reel wire to wind with
 * @param pitch from turn to turn, close where empty (m)
 * @param frequency at which the coil works (Hz)
 * @param celsius its temperature
 */
public record Winder(Shape shape, Reel reel, OptionalDouble pitch, double frequency, double celsius) {
    private static final double LOWEST = 500e3;
    private static final double HIGHEST = 1_700e3;
    private static final int CURVE_STEPS = 12;

    /** Share by which a core's loss differs from its grade's typical figure; common practice. */
    private static final double CORE_LOSS_KNOWN_TO = 0.3;

    private static final String BASIS = "reckoned from sizes, hand and ruler included";

    /** The coil nearest to an inductance (H). */
    public CoilAnswer wind(double inductance) {
        try {
            Former former = shape.former(reel.wire(), pitch);
            WindingDesign.Goal goal = new WindingDesign.Goal(inductance, frequency, celsius);
            WindingDesign.Design design = WindingDesign.design(former, goal);
            if (design instanceof WindingDesign.Wound wound) return coil(wound.sheet(), goal);
            if (design instanceof WindingDesign.DoesNotFit full)
                return new CoilAnswer.None(
                        "the " + plain(full.mostTurns()) + " turns that fit give " + henries(full.most()) + ", "
                                + Engineering.print(full.share(), Unit.FRACTION, 2) + " of what is wanted",
                        "Take thinner wire, more room or a larger former.");
            WindingDesign.OneTurnIsTooMuch one = (WindingDesign.OneTurnIsTooMuch) design;
            return new CoilAnswer.None("a single turn gives " + henries(one.least()), "Take a smaller former.");
        } catch (OutOfRange outside) {
            return new CoilAnswer.None(sentence(outside), "Change what lies outside.");
        }
    }

    /** "what is 3; covered is 4 to 5. Remedy" without its last stop. */
    static String sentence(OutOfRange outside) {
        return String.valueOf(outside.getMessage()).replaceFirst("\\.\\s*$", "");
    }

    private Coil coil(WindingSheet sheet, WindingDesign.Goal goal) {
        Winding winding = sheet.winding();
        List<String> notes = new ArrayList<>();
        if (!reel.assumed().isEmpty()) notes.add(reel.assumed());
        core(notes);
        Interval l = sheet.inductance();
        double omega = 2 * Math.PI * frequency;
        return new Coil(
                shape.words(),
                reel.words(),
                shape instanceof Shape.Cored cored ? material(cored.material()) : "",
                goal.inductance(),
                frequency,
                sheet.exactTurns(),
                (int) Math.round(winding.turns()),
                winding.layers(),
                known(l, Unit.HENRY, "inductance"),
                largestFirst(sheet.contributions()),
                sheet.oneTurnLess(),
                sheet.oneTurnMore(),
                sheet.turnsToSpare(),
                winding.windingLength(),
                winding.wireLength(),
                sheet.dcResistance(),
                q(winding, sheet.losses()),
                shares(sheet.losses()),
                capacitance(sheet.selfCapacitance()),
                resonance(sheet.selfCapacitance(), l.value()),
                1 / (omega * omega * l.value()),
                moment(winding),
                curve(winding),
                notes);
    }

    private static String material(Material material) {
        return material.name().equals("unnamed")
                ? "permeability " + plain(material.permeability())
                : material.name() + ", permeability " + plain(material.permeability());
    }

    private void core(List<String> notes) {
        if (!(shape instanceof Shape.Cored cored)) return;
        Material material = cored.material();
        if (!material.basis().isVerified())
            notes.add("What is held of " + material.name()
                    + " is recalled, unverified: confirm it from a data sheet, or wind a"
                    + " trial and say --measured.");
        else
            notes.add(
                    "Wind a trial of a dozen turns and say --measured and --turns: it tells the core's permeability.");
    }

    private Figure q(Winding winding, WindingSheet.LossFigure losses) {
        if (losses instanceof WindingSheet.Known known) return q(known.losses());
        if (shape instanceof Shape.Cored cored && cored.material().losses().isEmpty())
            return new Figure.Missing("unloaded Q", "the core's loss is not given" + wireAlone(winding));
        return new Figure.Missing("unloaded Q", lower(((WindingSheet.NotKnown) losses).reason()));
    }

    private static Figure.Known q(Losses losses) {
        double core = CORE_LOSS_KNOWN_TO * losses.core();
        return known(losses.widened(core, core).q(), Unit.NUMBER, "unloaded Q");
    }

    private String wireAlone(Winding winding) {
        if (!(winding instanceof RodCoil rod)) return "; name a grade with --core";
        try {
            double q = rod.copperLosses(frequency, celsius).q().value();
            return "; the wire alone would allow " + Engineering.print(q, Unit.NUMBER, 2)
                    + ". Name a grade with --core";
        } catch (OutOfRange notCovered) {
            return "; name a grade with --core";
        }
    }

    private static Map<String, Double> shares(WindingSheet.LossFigure figure) {
        if (!(figure instanceof WindingSheet.Known known)) return Map.of();
        Losses losses = known.losses();
        Map<String, Double> shares = new LinkedHashMap<>();
        shares.put("the wire's length", losses.dc() / losses.total());
        shares.put("skin effect", losses.skin() / losses.total());
        shares.put("crowding of turns", losses.proximity() / losses.total());
        if (losses.core() > 0) shares.put("the core", losses.core() / losses.total());
        return largestFirst(shares);
    }

    private static Map<String, Double> largestFirst(Map<String, Double> all) {
        Map<String, Double> sorted = new LinkedHashMap<>();
        all.entrySet().stream()
                .sorted(Map.Entry.<String, Double>comparingByValue().reversed())
                .forEach(e -> sorted.put(e.getKey(), e.getValue()));
        return sorted;
    }

    private static Figure capacitance(SelfCapacitance capacitance) {
        if (capacitance instanceof SelfCapacitance.Known known)
            return known(known.farads(), Unit.FARAD, "self-capacitance");
        return new Figure.Missing("self-capacitance", lower(((SelfCapacitance.NotKnown) capacitance).reason()));
    }

    private static Figure resonance(SelfCapacitance capacitance, double inductance) {
        if (capacitance instanceof SelfCapacitance.Known known)
            return known(known.selfResonance(inductance), Unit.HERTZ, "self-resonance");
        return new Figure.Missing("self-resonance", "its self-capacitance is not known");
    }

    private static Figure moment(Winding winding) {
        OptionalDouble area = winding instanceof RodCoil rod
                ? OptionalDouble.of(rod.momentPerAmpere())
                : winding instanceof RectangularFrame frame
                        ? OptionalDouble.of(frame.momentPerAmpere())
                        : winding instanceof SingleLayer layer
                                ? OptionalDouble.of(layer.momentPerAmpere())
                                : winding instanceof FlatSpiral spiral
                                        ? OptionalDouble.of(spiral.momentPerAmpere())
                                        : OptionalDouble.empty();
        if (area.isEmpty()) return new Figure.Missing("magnetic moment per ampere", "its field stays inside");
        return known(Interval.within(area.getAsDouble(), 0.03), Unit.SQUARE_METRE, "magnetic moment per ampere");
    }

    /** The whole of medium waves, or nothing: the sheet's own Q says why. */
    private List<Coil.QPoint> curve(Winding winding) {
        List<Coil.QPoint> points = new ArrayList<>();
        try {
            for (int k = 0; k <= CURVE_STEPS; k++) {
                double f = LOWEST + (HIGHEST - LOWEST) * k / CURVE_STEPS;
                points.add(new Coil.QPoint(f, q(winding.losses(f, celsius))));
            }
            return points;
        } catch (OutOfRange notCovered) {
            return List.of();
        }
    }

    static Figure.Known known(Interval interval, Unit unit, String quantity) {
        return new Figure.Known(interval.value(), unit, interval.low(), interval.high(), BASIS, quantity, "");
    }

    private static String lower(String sentence) {
        return Character.toLowerCase(sentence.charAt(0)) + sentence.substring(1).replaceFirst("\\.\\s*$", "");
    }

    private static String henries(double henries) {
        return Engineering.print(henries, Unit.HENRY, 3);
    }

    static String plain(double number) {
        return Engineering.print(number, Unit.NUMBER, 4).replaceFirst("\\.0+$", "");
    }

    /** Judges a trial winding: see {@link Trying}. */
    public TrialAnswer judge(int turns, double measured, double tolerance, OptionalDouble wanted) {
        return new Trying(this, turns, Interval.within(measured, tolerance), wanted).judge();
    }

    /** Whole turns to add or take off, none where nothing was asked. */
    static OptionalInt none() {
        return OptionalInt.empty();
    }
}
