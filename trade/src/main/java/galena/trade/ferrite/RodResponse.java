package galena.trade.ferrite;

import galena.trade.wire.SkinEffect;

/** What a rod does in the field of one ampere in its winding. */
final class RodResponse {
    private final double[] magnetisation;
    private final double addedInductance;
    private final double resistancePerLossFactor;

    private RodResponse(double[] magnetisation, double addedInductance, double resistancePerLossFactor) {
        this.magnetisation = magnetisation;
        this.addedInductance = addedInductance;
        this.resistancePerLossFactor = resistancePerLossFactor;
    }

    static RodResponse of(RodProblem rod, double permeability, double[] drive) {
        double chi = RodProblem.susceptibility(permeability), linkage = 0;
        double[] m = rod.magnetisation(chi, drive);
        for (int i = 0; i < m.length; i++) linkage += m[i] * drive[i];
        double slope = SkinEffect.MU_0 * rod.squareIntegral(m) / (chi * chi);
        return new RodResponse(m, SkinEffect.MU_0 * linkage, permeability * permeability * slope);
    }

    /** As {@link RodProblem} orders it; not to be changed (A/m). */
    double[] magnetisation() {
        return magnetisation;
    }

    /** What the rod adds to the winding's inductance in air (H). */
    double addedInductance() {
        return addedInductance;
    }

    /** µ²·dL/dχ (H): times ω and the loss factor tan δ/µ it is the core's series resistance, as µ″ = (tan δ/µ)·µ². */
    double resistancePerLossFactor() {
        return resistancePerLossFactor;
    }
}
