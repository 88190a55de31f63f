package galena.build.readings;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.Supply;
import galena.build.quantity.Unit;
import galena.build.wiring.Bend;
import galena.build.wiring.CircuitOf;
import galena.engine.part.Battery;
import galena.engine.part.Part;
import galena.engine.part.Preset;
import galena.engine.part.Trimmer;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Something about how readings were taken that was noted only so exactly, or not at all: where an adjustment stood, the supply, the
 * temperature. Shared by all readings under the same note. How exactly a note is meant is common practice, below.
 *
 * @param latent what it is
 * @param part that it changes; empty for the temperature
 * @param under whether it is of a situation
 * @param change what a standard normal number of it does to the part
 */
record Circumstance(Latent latent, String part, Predicate<Situation> under, Change change) {
    /** A position between the stops is read by eye to a hundredth of the travel, one standard deviation. */
    private static final double POSITION = 0.01;
    /** Supply voltages as meters read them. */
    private static final double NOTED_VOLTS = 0.005;
    /** A supply of a given voltage that nobody measured. */
    private static final double UNNOTED_VOLTS = 0.02;
    /** A battery that nobody measured has this charge or more. */
    private static final double FLATTEST = 0.1;
    /** Kelvin round 25 °C where no temperature was noted. */
    static final double ROOM = 3;

    /** What a number does to a part. */
    interface Change {
        Part on(Part part, double z);
    }

    boolean isOf(Situation situation) {
        return under.test(situation);
    }

    Part on(Part part, double z) {
        return change.on(part, z);
    }

    /** All those of some situations, alike ones once. */
    static List<Circumstance> of(Build build, List<Situation> situations) {
        List<Circumstance> all = new ArrayList<>();
        Set<String> seen = new LinkedHashSet<>();
        for (Situation situation : situations) {
            for (String name : build.adjustments()) {
                double stands = stands(build, situation, name);
                if (stands > 0 && stands < 1 && seen.add(name + stands)) all.add(position(build, name, stands));
            }
            if (build.supply().isPresent() && seen.add(situation.supply().toString()))
                all.add(supply(build.supply().get(), situation));
            if (situation.celsius().isEmpty() && seen.add("temperature")) all.add(temperature());
        }
        return all;
    }

    private static double stands(Build build, Situation situation, String adjustment) {
        Double noted = situation.set().get(adjustment);
        return noted != null
                ? noted
                : build.part(adjustment).orElseThrow().position().orElse(PartEntry.MIDDLE);
    }

    private static Circumstance position(Build build, String name, double stands) {
        String words = name + " set to " + Math.round(100 * stands) + " %";
        return new Circumstance(
                latent(words, Unit.FRACTION, name), name, s -> stands(build, s, name) == stands, (part, z) -> {
                    double there = Math.max(0, Math.min(1, stands + POSITION * z));
                    if (part instanceof Trimmer trimmer) return trimmer.at(there);
                    return part instanceof Preset preset ? preset.at(there) : part;
                });
    }

    private static Circumstance supply(Supply supply, Situation situation) {
        if (situation.supply().isPresent()) {
            double volts = situation.supply().getAsDouble();
            return new Circumstance(
                    latent("supply noted as " + volts + " V", Unit.VOLT, Supply.NAME),
                    Supply.NAME,
                    s -> s.supply().equals(situation.supply()),
                    (part, z) -> at(part, volts * (1 + NOTED_VOLTS * z)));
        }
        Change change = supply instanceof Supply.OfBattery battery
                ? (part, z) -> charged(part, CircuitOf.battery(battery), Bend.uniform(z))
                : (part, z) -> at(part, ((Battery) part).emf() * (1 + UNNOTED_VOLTS * z));
        return new Circumstance(
                latent("supply, not noted", Unit.VOLT, Supply.NAME),
                Supply.NAME,
                s -> s.supply().isEmpty(),
                change);
    }

    private static Part charged(Part part, galena.trade.battery.Battery battery, double u) {
        double charge = FLATTEST + (1 - FLATTEST) * u;
        Battery b = (Battery) part;
        return new Battery(b.name(), b.plus(), b.minus(), battery.emf(charge), battery.resistance(charge));
    }

    private static Part at(Part part, double volts) {
        Battery b = (Battery) part;
        return new Battery(b.name(), b.plus(), b.minus(), volts, b.internalResistance());
    }

    private static Circumstance temperature() {
        return new Circumstance(
                latent("temperature, not noted", Unit.KELVIN, ""),
                "",
                s -> s.celsius().isEmpty(),
                (part, z) -> part);
    }

    /** What an instrument multiplies all its readings by; it is no part's. */
    static Latent gain(String instrument) {
        return latent("gain of " + instrument, Unit.NUMBER, "");
    }

    private static Latent latent(String words, Unit unit, String part) {
        return new Latent(words, words, unit, part, Optional.empty(), Latent.Kind.CIRCUMSTANCE, Bend.NORMAL);
    }
}
