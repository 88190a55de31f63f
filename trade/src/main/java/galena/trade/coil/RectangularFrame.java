package galena.trade.coil;

import galena.trade.wire.OutOfRange;
import galena.trade.wire.Wire;
import java.util.Arrays;

/**
 * Turns on a rectangular or square frame, either side by side round a box or one inside another on a flat cross.
 * Summed from straight sides: self-inductances and Neumann's mutual ones, F. W. Grover, Inductance Calculations
 * (1946). Range: 1 to 100 turns taking up at most the shorter side (box) or 0.4 of it (flat), sides up to 10 to 1,
 * wire at most a fiftieth of the shorter side. Corners are taken sharp.
 *
 * @param turns number of turns; the last part turn counts in proportion
 * @param width of the outermost turn, to wire centre (m)
 * @param height of the outermost turn (m)
 * @param pitch from turn to turn (m)
 * @param lay how the turns lie
 * @param wire what it is wound with
 */
public record RectangularFrame(double turns, double width, double height, double pitch, Lay lay, Wire wire)
        implements Winding {
    /** How turns follow each other. */
    public enum Lay {
        /** Equal turns side by side along the axis. */
        BOX,
        /** Each turn inside the one before, in a plane. */
        FLAT
    }

    private static final int MOST_TURNS = 100;

    /** Of a flat frame, over its shorter side: 0.5 would fill it to the middle. */
    private static final double DEEPEST = 0.4;

    public RectangularFrame {
        double shorter = Math.min(width, height);
        OutOfRange.requirePositive("shorter side of the frame (m)", shorter);
        OutOfRange.require("longer/shorter side", Math.max(width, height) / shorter, 1, 10, "Build it less slender.");
        OutOfRange.require("turns", turns, 1, MOST_TURNS, "A frame of more turns is not covered.");
        OutOfRange.require(
                "pitch (m)", pitch, wire.outerDiameter() * (1 - 1e-9), shorter, "At least the wire's outer diameter.");
        OutOfRange.require("wire diameter/shorter side", wire.outerDiameter() / shorter, 0, 0.02, "Use thinner wire.");
        OutOfRange.require(
                "extent of the turns (m)",
                (turns - 1) * pitch,
                0,
                extent(shorter, lay) * (1 + 1e-9),
                "Box: up to the shorter side. Flat: up to 0.4 of it.");
    }

    @Override
    public double inductance(double frequency, double celsius) {
        double internal = InternalInductance.ratio(wire, frequency, celsius);
        double b = InternalInductance.conductorDiameter(wire) / 2, sum = 0;
        for (int i = 0; i < rings(); i++) {
            double w = width - inset(i), h = height - inset(i);
            sum += share(i) * share(i) * Rectangles.inductance(w, h, b, internal);
            for (int j = 0; j < i; j++) {
                double apart = lay == Lay.BOX ? (i - j) * pitch : 0;
                sum += 2 * share(i) * share(j) * Rectangles.mutual(w, h, width - inset(j), height - inset(j), apart);
            }
        }
        return sum;
    }

    /** Turns up to which the form is covered. */
    static double mostTurns(double width, double height, double pitch, Lay lay) {
        return Math.min(MOST_TURNS, 1 + Math.floor(extent(Math.min(width, height), lay) / pitch));
    }

    private static double extent(double shorter, Lay lay) {
        return lay == Lay.BOX ? shorter : DEEPEST * shorter;
    }

    private int rings() {
        return (int) Math.ceil(turns - 1e-9);
    }

    private double share(int ring) {
        return Math.min(1, turns - ring);
    }

    private double inset(int ring) {
        return lay == Lay.FLAT ? 2 * ring * pitch : 0;
    }

    @Override
    public double modelError() {
        return 0.01;
    }

    @Override
    public double wireLength() {
        double sum = 0;
        for (int i = 0; i < rings(); i++) sum += share(i) * 2 * (width + height - 2 * inset(i));
        return sum;
    }

    /** Turns times pitch (m). */
    @Override
    public double windingLength() {
        return turns * pitch;
    }

    @Override
    public int layers() {
        return 1;
    }

    /** Magnetic moment for one ampere (m²): the sum of the turns' areas. */
    public double momentPerAmpere() {
        double sum = 0;
        for (int i = 0; i < rings(); i++) sum += share(i) * (width - inset(i)) * (height - inset(i));
        return sum;
    }

    @Override
    public Losses losses(double frequency, double celsius) {
        return turnField().losses(this, frequency, celsius, 0, TurnField.RECKONED);
    }

    @Override
    public double inductanceShift(double frequency, double celsius) {
        return turnField().inductanceShift(this, frequency, celsius);
    }

    private TurnField turnField() {
        double[] across = new double[Math.max(1, (int) Math.round(turns))];
        Arrays.setAll(across, i -> i * pitch);
        return TurnField.ofParallels(across, new double[across.length]);
    }

    @Override
    public SelfCapacitance selfCapacitance() {
        return new SelfCapacitance.NotKnown("No published rule for frames is held. Measure two resonances.");
    }
}
