package galena.trade.ferrite;

import galena.trade.wire.OutOfRange;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Magnetisation of a round bar, susceptibility χ, in any axially symmetric field H_a that has no sources inside it.
 *
 * <p>The magnetisation is the one that makes ½∫M²/χ + ½(field energy of its poles) − ∫M·H_a least (W. F. Brown,
 * Magnetostatic Principles in Ferromagnetism, 1962, ch. 3). Trials have no divergence, as the truth has none in uniform
 * material, so poles sit on the surface only: M_z = Σ (ρ/a)^2k·m_k(z), M_ρ = −Σ ρ^(2k+1)/((2k+2)a^2k)·m_k′(z), with m_k
 * straight between 81 nodes crowded towards the ends and k = 0, 1. Being a minimum, inductance and moment err by the
 * square of what the shape errs; and high permeability, which spoils surface-pole equations solved point by point, only
 * drops the first term here. Two radial terms differ from three by under 0.05 % of flux from length 2 to 20 diameters.
 *
 * <p>Vectors run over k, then over nodes. Field strengths are those of one ampere.
 */
final class RodProblem {
    /** Closer to 1 the rod adds nothing that could be told from its absence. */
    static final double LEAST_PERMEABILITY = 1.001;

    private final RodMesh mesh;
    private final RealMatrix poles;
    private final RealMatrix mass;

    RodProblem(double length, double radius) {
        this.mesh = new RodMesh(length, radius);
        RodMatrices matrices = new RodMatrices(mesh);
        this.poles = matrices.poleEnergy();
        this.mass = matrices.mass();
    }

    RodMesh mesh() {
        return mesh;
    }

    /** Surface pole density on band e of the mantle for unit steps of m_k: −a/(2k+2)/Δz. */
    double bandDensity(double[] m, int e) {
        double sum = 0;
        for (int k = 0; k < RodMesh.RADIAL; k++)
            sum -= mesh.radius() / (2 * k + 2) * (m[k * RodMesh.NODES + e + 1] - m[k * RodMesh.NODES + e]);
        return sum / mesh.width(e);
    }

    /**
     * Magnetisation that a field brings about.
     *
     * @param susceptibility χ, more than 0
     * @param drive ∫M·H_a for each unit trial, see {@link RodDrive}
     */
    double[] magnetisation(double susceptibility, double[] drive) {
        RealMatrix matrix = poles.add(mass.scalarMultiply(1 / susceptibility));
        return new CholeskyDecomposition(matrix, 1e-9, 0)
                .getSolver()
                .solve(new ArrayRealVector(drive, false))
                .toArray();
    }

    /** ∫M² dV (A²m for one ampere). */
    double squareIntegral(double[] m) {
        ArrayRealVector v = new ArrayRealVector(m, false);
        return v.dotProduct(mass.operate(v));
    }

    /** ∫M·H for H = 1 A/m along the axis: the moment of a magnetisation, and the drive of a uniform field. */
    double[] uniformDrive() {
        double[] drive = new double[RodMesh.UNKNOWNS];
        for (int k = 0; k < RodMesh.RADIAL; k++) {
            for (int e = 0; e < RodMesh.ELEMENTS; e++) {
                double share = Math.PI * mesh.radius() * mesh.radius() / (k + 1) * mesh.width(e) / 2;
                drive[k * RodMesh.NODES + e] += share;
                drive[k * RodMesh.NODES + e + 1] += share;
            }
        }
        return drive;
    }

    double moment(double[] m) {
        return new ArrayRealVector(m, false).dotProduct(new ArrayRealVector(uniformDrive(), false));
    }

    /**
     * Flux through the middle over that without the rod, in a uniform field: B = µ₀M(1 + 1/χ) averaged over the
     * section.
     */
    double middlePermeability(double permeability) {
        double chi = susceptibility(permeability), mean = 0;
        double[] m = magnetisation(chi, uniformDrive());
        for (int k = 0; k < RodMesh.RADIAL; k++) mean += m[k * RodMesh.NODES + RodMesh.ELEMENTS / 2] / (k + 1);
        return mean * (1 + 1 / chi);
    }

    double magnetometricFactor(double permeability) {
        double chi = susceptibility(permeability);
        double mean = moment(magnetisation(chi, uniformDrive()))
                / (Math.PI * mesh.radius() * mesh.radius() * 2 * mesh.halfLength());
        return 1 / mean - 1 / chi;
    }

    static double susceptibility(double permeability) {
        return OutOfRange.require(
                        "permeability of the rod",
                        permeability,
                        LEAST_PERMEABILITY,
                        Material.MOST_PERMEABLE,
                        "Ferrite has 10 to 2000.")
                - 1;
    }
}
