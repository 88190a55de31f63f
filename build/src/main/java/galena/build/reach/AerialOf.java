package galena.build.reach;

import galena.build.figure.Figure;
import galena.build.folder.PartEntry;
import galena.build.form.Filled;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.build.wiring.AerialWire;
import galena.build.wiring.RodWinding;
import galena.build.wiring.Travel;
import galena.trade.coil.Interval;
import galena.trade.ferrite.CoreTrial;
import galena.trade.ferrite.Material;
import galena.trade.ferrite.RodCoil;
import galena.trade.ferrite.RodFormer;
import galena.trade.wire.OutOfRange;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** From a part of a build to the aerial it is. */
final class AerialOf {
    /** Spread of a grade's permeability where it is given by its nominal figure; makers' usual tolerance. */
    private static final double PERMEABILITY_KNOWN_TO = 0.2;

    /** Beyond this ratio a stated inductance and the sizes contradict each other. */
    private static final double CONTRADICTS = 0.35;

    /** Rods for medium waves lie above this permeability; common practice. */
    private static final double USUAL_ROD = 60;

    private static final String BASIS = "from the sizes in the build";

    private final PartEntry entry;
    private final Filled values;

    private AerialOf(PartEntry entry) {
        this.entry = entry;
        this.values = entry.values();
    }

    /** An aerial, or the reason why its moment can't be had. */
    sealed interface Answer {}

    record Known(Aerial aerial) implements Answer {}

    record Unknown(String part, String reason) implements Answer {}

    /** @param entry a part for which {@code kind().isAerial()} holds */
    static Answer of(PartEntry entry) {
        AerialOf aerial = new AerialOf(entry);
        try {
            return switch (entry.kind()) {
                case LOOPSTICK -> aerial.rod();
                case LOOP -> aerial.loop();
                case WIRE -> aerial.wire();
                default -> throw new IllegalArgumentException(entry.name() + " is no aerial");
            };
        } catch (OutOfRange outside) {
            return aerial.unknown("its sizes lie outside what can be reckoned: " + outside.getMessage());
        }
    }

    private Unknown unknown(String reason) {
        return new Unknown(entry.name(), reason);
    }

    private Unknown without(List<String> keys) {
        return unknown("it doesn't say " + String.join(", ", keys) + "; write " + (keys.size() == 1 ? "it" : "them")
                + " into " + entry.path());
    }

    private List<String> missing(String... keys) {
        return Arrays.stream(keys).filter(key -> !values.has(key)).toList();
    }

    private Answer rod() {
        List<String> missing = RodWinding.missing(entry);
        if (!missing.isEmpty()) return without(missing);
        RodWinding winding = RodWinding.of(entry);
        RodCoil coil = winding.coil();
        return values.has("permeability") ? ofGrade(coil) : ofInductance(winding.former(), coil);
    }

    private Answer ofGrade(RodCoil coil) {
        double nominal = values.si("permeability");
        Interval permeability = new Interval(
                nominal,
                Math.max(1.001, nominal * (1 - PERMEABILITY_KNOWN_TO)),
                Math.min(Material.MOST_PERMEABLE, nominal * (1 + PERMEABILITY_KNOWN_TO)));
        List<String> notes = new ArrayList<>();
        double reckoned = coil.inductance();
        if (Math.abs(Math.log(reckoned / inductance())) > Math.log(1 + CONTRADICTS)) {
            notes.add(
                    entry.name() + ": these turns on this rod reckon to " + henries(reckoned) + ", and the build says "
                            + henries(inductance()) + ". One of turns, sizes, permeability and inductance is wrong.");
        }
        return rodAerial(coil, permeability, "permeability " + plain(nominal) + " ±20 %", notes);
    }

    private Answer ofInductance(RodFormer former, RodCoil coil) {
        Interval measured = Interval.within(inductance(), Math.min(0.9, entry.tolerance()));
        CoreTrial.Finding finding = CoreTrial.rod(former, values.si("turns"), measured);
        if (finding instanceof CoreTrial.Identified found) {
            List<String> notes = new ArrayList<>();
            if (found.permeability().high() < USUAL_ROD)
                notes.add(entry.name() + ": its inductance and turns tell of a rod with a permeability of "
                        + plain(found.permeability().value())
                        + "; rods for medium waves have hundreds. Check the turns: the moment rests on them.");
            return rodAerial(
                    coil,
                    found.permeability(),
                    "permeability " + plain(found.permeability().value()) + ", told by its inductance",
                    notes);
        }
        if (finding instanceof CoreTrial.AtLeast least) {
            double low = least.permeability();
            Interval open = new Interval(Math.sqrt(low * Material.MOST_PERMEABLE), low, Material.MOST_PERMEABLE);
            return rodAerial(coil, open, "permeability " + plain(low) + " or more, told by its inductance", List.of());
        }
        CoreTrial.NoSuchCore none = (CoreTrial.NoSuchCore) finding;
        return unknown("no core gives " + henries(inductance()) + " with these turns on this rod, which can have "
                + henries(none.least()) + " to " + henries(none.most()) + ". " + none.remedy());
    }

    private Answer rodAerial(RodCoil coil, Interval permeability, String core, List<String> notes) {
        double value = coil.withPermeability(permeability.value()).momentPerAmpere();
        double low = coil.withPermeability(permeability.low()).momentPerAmpere();
        double high = coil.withPermeability(permeability.high()).momentPerAmpere();
        String words = "rod coil of " + plain(coil.turns()) + " turns, " + core;
        return new Known(new Aerial.Wound(
                entry.name(),
                words,
                moment(value, low * (1 - coil.modelError()), high * (1 + coil.modelError())),
                coil.rod().length(),
                coil.wireLength(),
                notes));
    }

    private Figure.Known moment(double value, double low, double high) {
        return new Figure.Known(
                value,
                Unit.SQUARE_METRE,
                Math.min(value, low),
                Math.max(value, high),
                BASIS,
                "magnetic moment per ampere",
                entry.name());
    }

    /** As the file has it: a slug or a sliding coil at its written position. */
    private double inductance() {
        return Travel.inductance(entry, entry.position().orElse(PartEntry.MIDDLE));
    }

    private Answer loop() {
        boolean round = values.has("diameter");
        List<String> missing = new ArrayList<>(missing("turns"));
        if (!round) missing.addAll(missing("width", "height"));
        if (missing.size() == 3) return without(List.of("turns", "diameter (or width and height)"));
        if (missing.size() == 2) return without(List.of("diameter (or width and height)"));
        if (!missing.isEmpty()) return without(missing);
        double turns = values.si("turns");
        double area, perimeter, size;
        if (round) {
            size = values.si("diameter");
            area = Math.PI * size * size / 4;
            perimeter = Math.PI * size;
        } else {
            double width = values.si("width"), height = values.si("height");
            area = width * height;
            perimeter = 2 * (width + height);
            size = Math.hypot(width, height);
        }
        double moment = turns * area;
        return new Known(new Aerial.Wound(
                entry.name(),
                "loop of " + plain(turns) + " turns, " + plain(area) + " m²",
                moment(moment, moment * (1 - Aerial.SIZES_KNOWN_TO), moment * (1 + Aerial.SIZES_KNOWN_TO)),
                size,
                turns * perimeter,
                List.of()));
    }

    private Answer wire() {
        String words = "wire of " + entry.label() + " upright, "
                + Engineering.print(AerialWire.of(entry).capacitance(), Unit.FARAD, 2);
        return new Known(new Aerial.Upright(entry.name(), words, AerialWire.of(entry), List.of()));
    }

    private static String henries(double henries) {
        return Engineering.print(henries, Unit.HENRY, 2);
    }

    private static String plain(double number) {
        return Engineering.print(number, Unit.NUMBER, number >= 100 ? 3 : 2).replaceFirst("\\.0+$", "");
    }

    /** All reasons, one sentence each. */
    static String reasons(List<Unknown> unknown) {
        return unknown.stream().map(u -> u.part() + ": " + u.reason()).collect(Collectors.joining(". "));
    }
}
