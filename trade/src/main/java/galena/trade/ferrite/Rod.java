package galena.trade.ferrite;

import galena.trade.wire.OutOfRange;
import org.jspecify.annotations.Nullable;

/**
 * A round ferrite bar by its size. Range: length 1 to 50 diameters. Holds the matrices of its magnetostatic problem
 * once they are needed; safe to share between threads.
 */
public final class Rod {
    private final double length;
    private final double diameter;
    private @Nullable RodProblem problem;

    private Rod(double length, double diameter) {
        this.length = length;
        this.diameter = diameter;
    }

    /**
     * @param length m
     * @param diameter m
     */
    public static Rod of(double length, double diameter) {
        OutOfRange.requirePositive("rod diameter (m)", diameter);
        OutOfRange.require("rod length/diameter", length / diameter, 1, 50, "Cut or join rods to come within.");
        return new Rod(length, diameter);
    }

    /** Length (m). */
    public double length() {
        return length;
    }

    /** Diameter (m). */
    public double diameter() {
        return diameter;
    }

    /**
     * Rod permeability: flux through the middle of the bare rod lying along a uniform field, over what passes there
     * without it.
     *
     * @param permeability of the material
     */
    public double rodPermeability(double permeability) {
        return problem().middlePermeability(permeability);
    }

    /** Magnetometric demagnetising factor: mean demagnetising field over mean magnetisation in a uniform field. */
    public double demagnetisingFactor(double permeability) {
        return problem().magnetometricFactor(permeability);
    }

    synchronized RodProblem problem() {
        if (problem == null) problem = new RodProblem(length, diameter / 2);
        return problem;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Rod rod && rod.length == length && rod.diameter == diameter;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(length) * 31 + Double.hashCode(diameter);
    }

    @Override
    public String toString() {
        return "rod " + length * 1e3 + " mm by " + diameter * 1e3 + " mm";
    }
}
