package galena.build.winding;

import galena.build.figure.Figure;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.trade.coil.Former;
import galena.trade.coil.Interval;
import galena.trade.coil.TurnsChange;
import galena.trade.coil.WindingDesign;
import galena.trade.ferrite.CoreTrial;
import galena.trade.ferrite.Material;
import galena.trade.ferrite.RodFormer;
import galena.trade.ferrite.Slide;
import galena.trade.ferrite.ToroidFormer;
import galena.trade.wire.OutOfRange;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** One trial winding, measured: what is the core, and how many turns off or on. */
final class Trying {
    private static final String SLIDE = "middle of the winding from that of the rod";

    private final Winder winder;
    private final int turns;
    private final Interval measured;
    private final OptionalDouble wanted;
    private final List<String> notes = new ArrayList<>();

    Trying(Winder winder, int turns, Interval measured, OptionalDouble wanted) {
        this.winder = winder;
        this.turns = turns;
        this.measured = measured;
        this.wanted = wanted;
    }

    TrialAnswer judge() {
        try {
            if (!(winder.shape() instanceof Shape.Cored cored)) return told(winder.shape(), Optional.empty());
            CoreTrial.Finding finding = finding(cored);
            if (finding instanceof CoreTrial.NoSuchCore none)
                return new TrialAnswer.None(
                        "no core of that size gives " + henries(measured.value()) + " with these turns; they can have "
                                + henries(none.least()) + " to " + henries(none.most()),
                        none.remedy());
            if (finding instanceof CoreTrial.Identified found) {
                Figure permeability = Winder.known(found.permeability(), Unit.NUMBER, "permeability of the core");
                return told(
                        cored.of(Material.ofPermeability(found.permeability().value())), Optional.of(permeability));
            }
            double least = ((CoreTrial.AtLeast) finding).permeability();
            Figure open = new Figure.Missing(
                    "permeability of the core",
                    "the reading tells only that it is " + Winder.plain(Math.rint(least))
                            + " or more; the shape decides from there");
            double middle = Math.sqrt(least * Material.MOST_PERMEABLE);
            return told(cored.of(Material.ofPermeability(middle)), Optional.of(open));
        } catch (OutOfRange outside) {
            return new TrialAnswer.None(Winder.sentence(outside), "Change what lies outside.");
        }
    }

    private CoreTrial.Finding finding(Shape.Cored cored) {
        Former former = cored.former(winder.reel().wire(), winder.pitch());
        if (former instanceof RodFormer rod) return CoreTrial.rod(rod, turns, measured);
        return CoreTrial.toroid(((ToroidFormer) former).wind(turns), measured);
    }

    private TrialAnswer told(Shape shape, Optional<Figure> permeability) {
        Former former = shape.former(winder.reel().wire(), winder.pitch());
        double reckoned = former.wind(turns).inductance(winder.frequency(), winder.celsius());
        if (permeability.isEmpty()) disagreement(reckoned);
        notes.add("Measured means free of self-capacitance: at a low frequency, or from two resonances.");
        Optional<Figure> turnsWanted = Optional.empty();
        OptionalInt change = Winder.none();
        if (wanted.isPresent()) {
            TurnsChange found = TurnsChange.of(
                    former,
                    turns,
                    measured,
                    new WindingDesign.Goal(wanted.getAsDouble(), winder.frequency(), winder.celsius()));
            turnsWanted = Optional.of(Winder.known(found.turnsWanted(), Unit.NUMBER, "turns wanted"));
            change = OptionalInt.of(found.change());
        }
        return new TrialAnswer.Told(new Trial(
                shape.words(),
                winder.reel().words(),
                turns,
                new Figure.Known(
                        measured.value(), Unit.HENRY, measured.low(), measured.high(), "measured", "inductance", ""),
                new Figure.Known(reckoned, Unit.HENRY, reckoned, reckoned, "reckoned from sizes", "inductance", ""),
                permeability,
                turnsWanted,
                change,
                slide(former, reckoned),
                notes));
    }

    /** On a rod: where the winding goes for the wanted inductance, turns untouched. */
    private Optional<Figure> slide(Former former, double reckoned) {
        if (wanted.isEmpty() || !(former instanceof RodFormer rod)) return Optional.empty();
        Interval calibration =
                new Interval(measured.value() / reckoned, measured.low() / reckoned, measured.high() / reckoned);
        Slide.Place place = Slide.to(rod.wind(turns), wanted.getAsDouble(), calibration);
        if (place instanceof Slide.At at) return Optional.of(Winder.known(at.position(), Unit.METRE, SLIDE));
        Slide.OutOfReach out = (Slide.OutOfReach) place;
        return Optional.of(new Figure.Missing(
                SLIDE, "these turns reach " + henries(out.least()) + " to " + henries(out.most()) + " along the rod"));
    }

    /** Without a core nothing explains a wide difference. */
    private void disagreement(double reckoned) {
        double ratio = measured.value() / reckoned;
        if (Math.abs(ratio - 1) > 0.1)
            notes.add("Sizes and turns reckon to " + henries(reckoned) + ", which the reading leaves by "
                    + Engineering.print(Math.abs(ratio - 1), Unit.FRACTION, 2)
                    + ". Count the turns again, and measure far below self-resonance.");
    }

    private static String henries(double henries) {
        return Engineering.print(henries, Unit.HENRY, 3);
    }
}
