package galena.trade.ferrite;

import galena.trade.coil.Bands;
import galena.trade.coil.CoaxialLoops;
import galena.trade.wire.OutOfRange;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.linear.Array2DRowRealMatrix;
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
    static final int ELEMENTS = 80;
    static final int NODES = ELEMENTS + 1;
    static final int RADIAL = 2;

    /** Closer to 1 the rod adds nothing that could be told from its absence. */
    static final double LEAST_PERMEABILITY = 1.001;

    static final int UNKNOWNS = RADIAL * NODES;
    static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(12);

    /** ∫∫ of pole discs (ρ/a)^2j and (ρ/a)^2k on each other, over a³: Weber and Schafheitlin's integrals in closed form. */
    private static final double[][] DISC = {{4.0 / 3, 28.0 / 45}, {28.0 / 45, 20.0 / 63}};

    private final double a;
    private final double half;
    private final double[] nodes = new double[NODES];
    private final RealMatrix poles;
    private final RealMatrix mass;

    RodProblem(double length, double radius) {
        this.a = radius;
        this.half = length / 2;
        for (int i = 0; i < NODES; i++) nodes[i] = half * Math.sin(Math.PI / 2 * (2.0 * i / ELEMENTS - 1));
        this.poles = poleEnergy();
        this.mass = massMatrix();
    }

    double radius() {
        return a;
    }

    double halfLength() {
        return half;
    }

    double node(int i) {
        return nodes[i];
    }

    /** Surface pole density on band e of the mantle for unit steps of m_k: −a/(2k+2)/Δz. */
    double bandDensity(double[] m, int e) {
        double sum = 0;
        for (int k = 0; k < RADIAL; k++) sum -= a / (2 * k + 2) * (m[k * NODES + e + 1] - m[k * NODES + e]);
        return sum / (nodes[e + 1] - nodes[e]);
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
        double[] drive = new double[UNKNOWNS];
        for (int k = 0; k < RADIAL; k++) {
            for (int e = 0; e < ELEMENTS; e++) {
                double share = Math.PI * a * a / (k + 1) * (nodes[e + 1] - nodes[e]) / 2;
                drive[k * NODES + e] += share;
                drive[k * NODES + e + 1] += share;
            }
        }
        return drive;
    }

    double moment(double[] m) {
        return new ArrayRealVector(m, false).dotProduct(new ArrayRealVector(uniformDrive(), false));
    }

    /** Flux through the middle over that without the rod, in a uniform field: B = µ₀M(1 + 1/χ) averaged over the section. */
    double middlePermeability(double permeability) {
        double chi = susceptibility(permeability), mean = 0;
        double[] m = magnetisation(chi, uniformDrive());
        for (int k = 0; k < RADIAL; k++) mean += m[k * NODES + ELEMENTS / 2] / (k + 1);
        return mean * (1 + 1 / chi);
    }

    double magnetometricFactor(double permeability) {
        double chi = susceptibility(permeability);
        double mean = moment(magnetisation(chi, uniformDrive())) / (Math.PI * a * a * 2 * half);
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

    // --- matrices ---

    private RealMatrix poleEnergy() {
        double[][] charges = chargesOfTrials();
        RealMatrix c = new Array2DRowRealMatrix(charges, false);
        RealMatrix energy = c.transpose()
                .multiply(new Array2DRowRealMatrix(chargeInteraction(), false))
                .multiply(c);
        return energy.add(energy.transpose()).scalarMultiply(0.5); // symmetric to the last bit, as Cholesky asks
    }

    /** Rows: pole density on each band, then (ρ/a)^2k coefficients on the top and on the bottom; columns: trials. */
    private double[][] chargesOfTrials() {
        double[][] c = new double[ELEMENTS + 2 * RADIAL][UNKNOWNS];
        for (int k = 0; k < RADIAL; k++) {
            for (int e = 0; e < ELEMENTS; e++) {
                double density = a / (2 * k + 2) / (nodes[e + 1] - nodes[e]);
                c[e][k * NODES + e] = density;
                c[e][k * NODES + e + 1] = -density;
            }
            c[ELEMENTS + k][k * NODES + ELEMENTS] = 1;
            c[ELEMENTS + RADIAL + k][k * NODES] = -1;
        }
        return c;
    }

    private double[][] chargeInteraction() {
        double[][] g = new double[ELEMENTS + 2 * RADIAL][ELEMENTS + 2 * RADIAL];
        for (int i = 0; i < ELEMENTS; i++) {
            for (int j = 0; j <= i; j++) {
                double each =
                        Bands.interaction(t -> ringPotential(a, a, t), nodes[i], nodes[i + 1], nodes[j], nodes[j + 1]);
                g[i][j] = g[j][i] = square(2 * Math.PI * a) * each;
            }
            for (int k = 0; k < RADIAL; k++) {
                g[i][ELEMENTS + k] = g[ELEMENTS + k][i] = bandWithDisc(i, half, k);
                g[i][ELEMENTS + RADIAL + k] = g[ELEMENTS + RADIAL + k][i] = bandWithDisc(i, -half, k);
            }
        }
        for (int j = 0; j < RADIAL; j++) {
            for (int k = 0; k < RADIAL; k++) {
                int top = ELEMENTS + j, bottom = ELEMENTS + RADIAL + k;
                g[top][ELEMENTS + k] = g[ELEMENTS + RADIAL + j][bottom] = DISC[j][k] * a * a * a;
                g[top][bottom] = g[bottom][top] = discWithDisc(j, k);
            }
        }
        return g;
    }

    /** Potential of a ring of radius r1 and unit charge at radius r2, z away, both about one axis: K/(2π²s). */
    static double ringPotential(double r1, double r2, double z) {
        double s2 = square(r1 + r2) + z * z;
        return CoaxialLoops.bigK((square(r1 - r2) + z * z) / s2) / (2 * Math.PI * Math.PI * Math.sqrt(s2));
    }

    private double bandWithDisc(int band, double end, int k) {
        double from = Math.abs(nodes[band] - end), to = Math.abs(nodes[band + 1] - end);
        double near = Math.min(from, to), far = Math.max(from, to), sum = 0;
        for (int i = 0; i < RULE.getNumberOfPoints(); i++) {
            double s = unit(i), w = RULE.getWeight(i) / 2;
            double t = near < 1e-9 * half ? far * s * s * s : near + (far - near) * s;
            double wt = near < 1e-9 * half ? w * 3 * s * s * far : w * (far - near);
            for (int j = 0; j < RULE.getNumberOfPoints(); j++) {
                sum += wt * discWeight(j, k) * ringPotential(discRadius(j), a, t);
            }
        }
        return 2 * Math.PI * a * sum;
    }

    private double discWithDisc(int j, int k) {
        double sum = 0;
        for (int p = 0; p < RULE.getNumberOfPoints(); p++) {
            for (int q = 0; q < RULE.getNumberOfPoints(); q++) {
                sum += discWeight(p, j) * discWeight(q, k) * ringPotential(discRadius(p), discRadius(q), 2 * half);
            }
        }
        return sum;
    }

    /** Radii on an end face, crowded towards the rim. */
    double discRadius(int point) {
        return a * (1 - square(1 - unit(point)));
    }

    /** Charge of the ring about {@link #discRadius} for pole density (ρ/a)^2k. */
    double discWeight(int point, int k) {
        double r = discRadius(point), dr = a * (1 - unit(point)) * RULE.getWeight(point);
        return 2 * Math.PI * r * dr * Math.pow(r / a, 2 * k);
    }

    private static double unit(int point) {
        return (RULE.getPoint(point) + 1) / 2;
    }

    private RealMatrix massMatrix() {
        double[][] mass = new double[UNKNOWNS][UNKNOWNS];
        for (int j = 0; j < RADIAL; j++) {
            for (int k = 0; k < RADIAL; k++) {
                double along = Math.PI * a * a / (j + k + 1);
                double across = 2 * Math.PI * square(a * a) / ((2 * j + 2) * (2 * k + 2) * (2 * j + 2 * k + 4));
                for (int e = 0; e < ELEMENTS; e++) {
                    double dz = nodes[e + 1] - nodes[e];
                    int p = j * NODES + e, q = k * NODES + e;
                    mass[p][q] += along * dz / 3 + across / dz;
                    mass[p + 1][q + 1] += along * dz / 3 + across / dz;
                    mass[p][q + 1] += along * dz / 6 - across / dz;
                    mass[p + 1][q] += along * dz / 6 - across / dz;
                }
            }
        }
        return new Array2DRowRealMatrix(mass, false);
    }

    private static double square(double x) {
        return x * x;
    }
}
