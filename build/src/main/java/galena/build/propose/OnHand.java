package galena.build.propose;

import galena.build.figure.Figure;
import galena.build.folder.Drawer;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.quantity.Engineering;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.build.winding.Coil;
import galena.build.winding.Cores;
import galena.build.winding.Reel;
import galena.build.winding.Shape;
import galena.build.winding.Winder;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoubleFunction;

/**
 * What there is to wind coils with: a tube for the oscillator's, a rod or a frame for the aerial. Coils wound once are kept; many
 * threads share it.
 */
final class OnHand {
    private static final double ROOM_TEMPERATURE = 25;
    private static final double TUBE = 16e-3, TUBE_ROOM = 60e-3;
    private static final double PERMEABILITY = 250;

    /** Rods for medium waves keep about this with their wire; recalled, and the patterns' own figure. */
    private static final double ROD_Q = 120;

    private static final String FINE = "0.2 mm", THICK = "0.4 mm";

    private static final List<Form> USUAL_RODS =
            List.of(new Form(0.1, 10e-3, PERMEABILITY), new Form(0.2, 10e-3, PERMEABILITY));

    private static final List<Form> FRAMES = List.of(new Form(0.3, 0, 1), new Form(0.6, 0, 1));

    private static final MathContext THREE_DIGITS = new MathContext(3);

    private final double carrier;
    private final List<Form> forms;
    private final List<Double> tubes;
    private final List<String> fine;
    private final List<String> thick;
    private final Map<String, Optional<Wound>> wound = new ConcurrentHashMap<>();

    /**
     * What an aerial may be wound on.
     *
     * @param size length of a rod, side of a frame, m
     * @param diameter of a rod, m; 0 for a frame
     * @param permeability of a rod
     */
    record Form(double size, double diameter, double permeability) {
        boolean isRod() {
            return diameter > 0;
        }

        String words() {
            String cm = plain(100 * size) + " cm";
            return isRod() ? "rod of " + cm : "frame of " + cm + " a side";
        }
    }

    /**
     * A coil as it goes into a build.
     *
     * @param inductance that the whole turns give, H
     * @param turns whole
     * @param keys the build's keys from the kind on, without pins
     * @param recipe in words
     */
    record Wound(double inductance, int turns, String keys, String recipe) {}

    /**
     * @param carrier at which coils work, Hz
     * @param drawer what it lists of a kind is taken; where it lists none, what shops keep
     * @throws BadInputException for wire that nobody winds
     */
    OnHand(double carrier, Drawer drawer) throws BadInputException {
        this.carrier = carrier;
        forms = new ArrayList<>();
        drawer.rods().stream()
                .map(r -> new Form(r.length(), r.diameter(), r.permeability()))
                .sorted(Comparator.comparingDouble(Form::size))
                .forEach(forms::add);
        if (forms.isEmpty()) forms.addAll(USUAL_RODS);
        forms.addAll(FRAMES);
        tubes = drawer.tubes().isEmpty()
                ? List.of(TUBE)
                : drawer.tubes().stream().map(Quantity::value).toList();
        fine = drawer.wires().isEmpty() ? List.of(FINE) : drawer.wires();
        thick = drawer.wires().isEmpty() ? List.of(THICK) : drawer.wires();
        for (String wire : drawer.wires()) reel(wire);
    }

    private static Reel reel(String wire) throws BadInputException {
        try {
            return Reel.read(wire, OptionalDouble.empty());
        } catch (BadInputException bad) {
            Problem why = bad.problems().get(0);
            throw new BadInputException(
                    new Problem(new Place("drawer.yaml", 1, 1), "wires", why.found(), why.rule(), why.remedy()));
        }
    }

    /** What an aerial may be wound on, the handiest first. */
    List<Form> forms() {
        return forms;
    }

    /** The form of a build's aerial, where it is one of those on hand. */
    Optional<Form> form(PartEntry aerial) {
        boolean rod = aerial.kind() == PartKind.LOOPSTICK;
        double size = aerial.values().si(rod ? "rod_length" : "width", 0);
        double diameter = rod ? aerial.values().si("rod_diameter", 0) : 0;
        return forms.stream()
                .filter(f -> f.isRod() == rod
                        && Math.abs(f.size() - size) < 1e-6
                        && Math.abs(f.diameter() - diameter) < 1e-6)
                .findFirst();
    }

    /** The oscillator's coil nearest to an inductance (H), one layer on the tube and of the wire that give most Q. */
    Optional<Wound> tube(double inductance) {
        return once("tube", inductance, this::onTube);
    }

    private Optional<Wound> onTube(double inductance) {
        Optional<Wound> best = Optional.empty();
        double most = 0;
        for (double tube : tubes) {
            for (String wire : fine) {
                Optional<Coil> coil = wound(inductance, new Shape.Tube(tube, TUBE_ROOM), wire);
                if (coil.isEmpty() || !(coil.get().q() instanceof Figure.Known q) || q.value() <= most) continue;
                most = q.value();
                String keys = "coil: " + henries(coil.get()) + ", q: " + Math.round(most) + " @ " + megahertz()
                        + ", tolerance: 5 %, tempco: 50 ppm/K";
                best = Optional.of(new Wound(
                        value(coil.get()),
                        coil.get().turns(),
                        keys,
                        recipe(coil.get(), "a tube of " + plain(1e3 * tube) + " mm")));
            }
        }
        return best;
    }

    /** The aerial's coil nearest to an inductance (H). */
    Optional<Wound> aerial(Form form, double inductance) {
        return once(form.toString(), inductance, henries -> form.isRod() ? rod(form, henries) : frame(form, henries));
    }

    /** To three digits, which are finer than a turn: so the same coil comes of it whoever asks first. */
    private Optional<Wound> once(String what, double inductance, DoubleFunction<Optional<Wound>> winding) {
        double rounded = new BigDecimal(inductance).round(THREE_DIGITS).doubleValue();
        String key = what + " " + rounded;
        Optional<Wound> kept = wound.get(key);
        if (kept != null) return kept;
        Optional<Wound> made = winding.apply(rounded);
        wound.put(key, made);
        return made;
    }

    /** The first wire on hand that goes on the rod; its Q is the rod's rather than the wire's. */
    private Optional<Wound> rod(Form form, double inductance) {
        Shape rod =
                Cores.named(plain(form.permeability())).orElseThrow().stick(form.size, form.diameter, form.diameter, 0);
        return thick.stream()
                .flatMap(wire -> wound(inductance, rod, wire).stream())
                .findFirst()
                .map(c -> new Wound(
                        value(c),
                        c.turns(),
                        String.format(
                                Locale.ROOT,
                                "loopstick: %s, q: %.0f @ 1 MHz, tolerance: 5 %%, turns: %d, rod_length: %s mm, rod_diameter: %s mm,"
                                        + " winding_length: %.1f mm, permeability: %s, lead: 4 cm, ground_lead: 0 m",
                                henries(c),
                                ROD_Q,
                                c.turns(),
                                plain(1e3 * form.size),
                                plain(1e3 * form.diameter),
                                1e3 * c.windingLength(),
                                plain(form.permeability())),
                        recipe(c, "the middle of a " + form.words() + ", permeability " + plain(form.permeability()))));
    }

    private Optional<Wound> frame(Form form, double inductance) {
        Shape frame = new Shape.Frame(form.size, form.size, 0.06, false);
        return thick.stream()
                .flatMap(wire -> wound(inductance, frame, wire).stream())
                .filter(c -> c.q() instanceof Figure.Known)
                .max(Comparator.comparingDouble(c -> ((Figure.Known) c.q()).value()))
                .map(c -> new Wound(
                        value(c),
                        c.turns(),
                        String.format(
                                Locale.ROOT,
                                "loop: %s, q: %.0f @ %s, tolerance: 5 %%, turns: %d, width: %.0f cm, height: %.0f cm,"
                                        + " lead: 4 cm, ground_lead: 0 m",
                                henries(c),
                                ((Figure.Known) c.q()).value(),
                                megahertz(),
                                c.turns(),
                                100 * form.size,
                                100 * form.size),
                        recipe(c, "a " + form.words())));
    }

    private Optional<Coil> wound(double inductance, Shape shape, String wire) {
        try {
            Winder winder = new Winder(shape, reel(wire), OptionalDouble.empty(), carrier, ROOM_TEMPERATURE);
            return winder.wind(inductance) instanceof Coil coil ? Optional.of(coil) : Optional.empty();
        } catch (BadInputException never) {
            throw new IllegalStateException("wire that was read once", never);
        }
    }

    private static String plain(double number) {
        return new BigDecimal(number)
                .round(new MathContext(4))
                .stripTrailingZeros()
                .toPlainString();
    }

    private static double value(Coil coil) {
        return ((Figure.Known) coil.inductance()).value();
    }

    private static String henries(Coil coil) {
        return Engineering.print(value(coil), Unit.HENRY, 3);
    }

    private String megahertz() {
        return Engineering.print(carrier, Unit.HERTZ, 3);
    }

    private static String recipe(Coil coil, String on) {
        return String.format(
                Locale.ROOT,
                "%d turns of %s on %s, %.1f mm long, %.1f m of wire; a turn less gives %s, a turn more %s",
                coil.turns(),
                coil.wire(),
                on,
                1e3 * coil.windingLength(),
                coil.wireLength(),
                Engineering.print(coil.oneLess(), Unit.HENRY, 3),
                Engineering.print(coil.oneMore(), Unit.HENRY, 3));
    }
}
