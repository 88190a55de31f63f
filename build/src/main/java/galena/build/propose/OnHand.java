package galena.build.propose;

import galena.build.figure.Figure;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.winding.Coil;
import galena.build.winding.Cores;
import galena.build.winding.Reel;
import galena.build.winding.Shape;
import galena.build.winding.Winder;
import java.math.BigDecimal;
import java.math.MathContext;
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
    private static final double ROD_DIAMETER = 10e-3;
    private static final double PERMEABILITY = 250;

    /** Rods for medium waves keep about this with their wire; recalled, and the patterns' own figure. */
    private static final double ROD_Q = 120;

    private static final String FINE = "0.2 mm", THICK = "0.4 mm";

    private static final MathContext THREE_DIGITS = new MathContext(3);

    private final double carrier;
    private final Map<String, Optional<Wound>> wound = new ConcurrentHashMap<>();

    /** What an aerial may be wound on, the handiest first. */
    enum Form {
        ROD_100(0.1, true),
        ROD_200(0.2, true),
        FRAME_30(0.3, false),
        FRAME_60(0.6, false);

        private final double size;
        private final boolean rod;

        Form(double size, boolean rod) {
            this.size = size;
            this.rod = rod;
        }

        double size() {
            return size;
        }

        boolean isRod() {
            return rod;
        }

        String words() {
            String cm = Math.round(100 * size) + " cm";
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

    /** @param carrier at which coils work, Hz */
    OnHand(double carrier) {
        this.carrier = carrier;
    }

    /** The oscillator's coil nearest to an inductance (H), one layer on the tube. */
    Optional<Wound> tube(double inductance) {
        return once("tube", inductance, this::onTube);
    }

    private Optional<Wound> onTube(double inductance) {
        return wound("tube", inductance, new Shape.Tube(TUBE, TUBE_ROOM), FINE)
                .filter(c -> c.q() instanceof Figure.Known)
                .map(c -> {
                    double q = ((Figure.Known) c.q()).value();
                    String keys = "coil: " + henries(c) + ", q: " + Math.round(q) + " @ " + megahertz()
                            + ", tolerance: 5 %, tempco: 50 ppm/K";
                    return new Wound(value(c), c.turns(), keys, recipe(c, "a tube of 16 mm"));
                });
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

    private Optional<Wound> rod(Form form, double inductance) {
        Shape rod = Cores.named(Long.toString(Math.round(PERMEABILITY)))
                .orElseThrow()
                .stick(form.size, ROD_DIAMETER, ROD_DIAMETER, 0);
        return wound("rod", inductance, rod, THICK)
                .map(c -> new Wound(
                        value(c),
                        c.turns(),
                        String.format(
                                Locale.ROOT,
                                "loopstick: %s, q: %.0f @ 1 MHz, tolerance: 5 %%, turns: %d, rod_length: %.0f mm, rod_diameter: %.0f mm,"
                                        + " winding_length: %.1f mm, permeability: %.0f, lead: 4 cm, ground_lead: 0 m",
                                henries(c),
                                ROD_Q,
                                c.turns(),
                                1e3 * form.size,
                                1e3 * ROD_DIAMETER,
                                1e3 * c.windingLength(),
                                PERMEABILITY),
                        recipe(c, "the middle of a " + form.words() + ", permeability " + Math.round(PERMEABILITY))));
    }

    private Optional<Wound> frame(Form form, double inductance) {
        Shape frame = new Shape.Frame(form.size, form.size, 0.06, false);
        return wound("frame", inductance, frame, THICK)
                .filter(c -> c.q() instanceof Figure.Known)
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

    private Optional<Coil> wound(String what, double inductance, Shape shape, String wire) {
        try {
            Winder winder = new Winder(
                    shape, Reel.read(wire, OptionalDouble.empty()), OptionalDouble.empty(), carrier, ROOM_TEMPERATURE);
            return winder.wind(inductance) instanceof Coil coil ? Optional.of(coil) : Optional.empty();
        } catch (BadInputException never) {
            throw new IllegalStateException(what, never);
        }
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
