package galena.build.winding;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.form.Filled;
import galena.build.source.BadInputException;
import galena.trade.ferrite.Material;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How one coil of a build is wound.
 *
 * @param part whose
 * @param asBuilt whether the build says on what; else a usual former is proposed
 * @param former on what, with sizes
 * @param coil as it comes out; its turns are the reckoned ones
 * @param turns to begin with: the build's own where it names them
 * @param wantedQ at the frequency, as the build states it; empty where it does not
 * @param corrections turns to change for what a trial reads
 */
public record WindingPlan(
        String part,
        boolean asBuilt,
        String former,
        Coil coil,
        double turns,
        OptionalDouble wantedQ,
        List<Correction> corrections) {
    /** Formers from any drawer or kitchen, diameters in metres (common practice). */
    private static final double[] TUBES = {10e-3, 12e-3, 16e-3, 20e-3, 25e-3, 32e-3, 40e-3};

    /** Enamelled copper as it is sold, bare diameters in metres. */
    private static final double[] WIRES = {0.1e-3, 0.15e-3, 0.2e-3, 0.25e-3, 0.3e-3, 0.4e-3, 0.5e-3, 0.6e-3, 0.8e-3};

    /** On a tube wire of this size is wound by hand without trouble. */
    private static final double HANDY = 0.3e-3;

    /** A winding this long against its diameter has the most inductance and Q for its wire, or nearly (common practice). */
    private static final double BEST_SHAPE = 0.7;

    /** What lies under the wire on a rod: a sleeve of paper (m). */
    private static final double SLEEVE = 1e-3;

    /** Where a build names no material (common practice). */
    private static final double USUAL_ROD = 250;

    private static final double ROOM_TEMPERATURE = 25;

    /** A tube is taken to be this much longer than thick. */
    private static final double ROOM = 20;

    /** What a trial may read, a share of what is wanted. */
    private static final double[] READ = {0.9, 0.95, 0.98, 1.02, 1.05, 1.1};

    public WindingPlan {
        corrections = List.copyOf(corrections);
    }

    /**
     * @param read inductance read, a share of what is wanted
     * @param turns to add, below zero to take off
     */
    public record Correction(double read, double turns) {}

    /**
     * Plans of every coil with an inductance; those that can't be reckoned are left out with a reason.
     *
     * @param frequency at which they work, Hz
     * @param reasons takes "Lx: why not"
     */
    public static List<WindingPlan> of(Build build, double frequency, List<String> reasons) {
        List<WindingPlan> plans = new ArrayList<>();
        for (PartEntry entry : build.parts().values()) {
            if (!entry.kind().isCoil()) continue;
            double henries = entry.value().map(v -> v.value()).orElseGet(() -> entry.range()
                    .orElseThrow()
                    .at(entry.position().orElse(PartEntry.MIDDLE)));
            Optional<Wound> wound = wound(entry, henries, frequency, reasons);
            wound.ifPresent(w -> plans.add(plan(entry, w, frequency)));
        }
        return plans;
    }

    /** @param size of a tube: its diameter (m); elsewhere of no account */
    private record Wound(boolean asBuilt, String former, double size, Coil coil) {}

    private static WindingPlan plan(PartEntry entry, Wound wound, double frequency) {
        Coil coil = wound.coil;
        double turns = entry.values().si("turns", coil.turns());
        double n = coil.turns();
        double exponent = n > 1 ? Math.log(coil.oneMore() / coil.oneLess()) / Math.log((n + 1) / (n - 1)) : 2;
        List<Correction> corrections = new ArrayList<>();
        for (double read : READ) corrections.add(new Correction(read, turns * (Math.pow(1 / read, 1 / exponent) - 1)));
        OptionalDouble q = entry.values()
                .atFrequency("q")
                .map(at -> OptionalDouble.of(
                        at.value().value() * frequency / at.frequency().value()))
                .orElse(OptionalDouble.empty());
        return new WindingPlan(entry.name(), wound.asBuilt, wound.former, coil, turns, q, corrections);
    }

    private static Optional<Wound> wound(PartEntry entry, double henries, double frequency, List<String> reasons) {
        Optional<Wound> wound = entry.kind() == PartKind.LOOPSTICK
                ? rod(entry, henries, frequency)
                : entry.kind() == PartKind.LOOP ? loop(entry, henries, frequency) : tube(henries, frequency);
        if (wound.isEmpty())
            reasons.add(entry.name() + ": "
                    + (entry.kind() == PartKind.COIL
                            ? "on no usual tube does it come out; take a bobbin or a ready-made choke"
                            : "the build does not say enough of its sizes, or they do not give its inductance"));
        return wound;
    }

    /** The wire that best fills the length the build gives, on its own rod. */
    private static Optional<Wound> rod(PartEntry entry, double henries, double frequency) {
        Filled v = entry.values();
        if (!v.has("rod_length") || !v.has("rod_diameter")) return Optional.empty();
        double length = v.si("rod_length"), diameter = v.si("rod_diameter");
        double sleeve = diameter + SLEEVE;
        Material material = v.has("permeability")
                ? Cores.named(String.valueOf((int) Math.round(v.si("permeability"))))
                        .map(Cores.Material::grade)
                        .orElseGet(() -> Material.ofPermeability(v.si("permeability")))
                : Material.ofPermeability(USUAL_ROD);
        Shape shape = new Shape.Stick(length, diameter, sleeve, v.si("position", 0), material);
        OptionalDouble pitch = v.has("turns") && v.has("winding_length")
                ? OptionalDouble.of(v.si("winding_length") / v.si("turns"))
                : OptionalDouble.empty();
        String words = "rod " + millimetres(length) + " long, " + millimetres(diameter) + " thick, over a sleeve of "
                + millimetres(sleeve);
        return coil(shape, thickest(pitch), pitch, henries, frequency).map(c -> new Wound(true, words, diameter, c));
    }

    private static double thickest(OptionalDouble pitch) {
        double best = WIRES[0];
        for (double wire : WIRES) if (reel(wire).wire().outerDiameter() <= pitch.orElse(HANDY + 0.1e-3)) best = wire;
        return best;
    }

    private static Optional<Wound> loop(PartEntry entry, double henries, double frequency) {
        Filled v = entry.values();
        if (v.has("diameter")) {
            double diameter = v.si("diameter");
            return coil(new Shape.Tube(diameter, diameter), HANDY, OptionalDouble.empty(), henries, frequency)
                    .map(c -> new Wound(true, "round frame of " + millimetres(diameter), diameter, c));
        }
        if (!v.has("width") || !v.has("height")) return Optional.empty();
        double width = v.si("width"), height = v.si("height");
        Shape frame = new Shape.Frame(width, height, Math.min(width, height), false);
        return coil(frame, HANDY, OptionalDouble.empty(), henries, frequency)
                .map(c -> new Wound(true, "frame of " + millimetres(width) + " by " + millimetres(height), height, c));
    }

    /** On the tube whose winding comes nearest to the best shape. */
    private static Optional<Wound> tube(double henries, double frequency) {
        List<Wound> all = new ArrayList<>();
        for (double diameter : TUBES)
            coil(new Shape.Tube(diameter, ROOM * diameter), HANDY, OptionalDouble.empty(), henries, frequency)
                    .ifPresent(c ->
                            all.add(new Wound(false, "tube of " + millimetres(diameter) + " outside", diameter, c)));
        return all.stream().min(Comparator.comparingDouble(WindingPlan::misshapen));
    }

    private static double misshapen(Wound wound) {
        return Math.abs(Math.log(wound.coil.windingLength() / wound.size / BEST_SHAPE));
    }

    private static Optional<Coil> coil(
            Shape shape, double wire, OptionalDouble pitch, double henries, double frequency) {
        Winder winder = new Winder(shape, reel(wire), pitch, frequency, ROOM_TEMPERATURE);
        return winder.wind(henries) instanceof Coil coil ? Optional.of(coil) : Optional.empty();
    }

    private static Reel reel(double wire) {
        try {
            return Reel.read(millimetres(wire), OptionalDouble.empty());
        } catch (BadInputException impossible) {
            throw new IllegalStateException("wire of " + wire + " m is sold everywhere", impossible);
        }
    }

    private static String millimetres(double metres) {
        return new BigDecimal(metres * 1e3)
                        .round(new MathContext(3))
                        .stripTrailingZeros()
                        .toPlainString() + " mm";
    }
}
