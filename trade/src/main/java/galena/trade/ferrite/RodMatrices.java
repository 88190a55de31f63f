package galena.trade.ferrite;

import galena.trade.coil.Bands;
import galena.trade.coil.CoaxialLoops;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.RealMatrix;

/** The two quadratic forms of {@link RodProblem}: energy of the poles' field, and ∫M². */
final class RodMatrices {
    /**
     * ∫∫ of pole discs (ρ/a)^2j and (ρ/a)^2k on each other, over a³: Weber and Schafheitlin's integrals in closed
     * form.
     */
    private static final double[][] DISC = {{4.0 / 3, 28.0 / 45}, {28.0 / 45, 20.0 / 63}};

    private final RodMesh mesh;
    private final double a;
    private final double half;

    RodMatrices(RodMesh mesh) {
        this.mesh = mesh;
        this.a = mesh.radius();
        this.half = mesh.halfLength();
    }

    /** Energy of the field of each pair of trials' poles, over µ₀. */
    RealMatrix poleEnergy() {
        double[][] charges = chargesOfTrials();
        RealMatrix c = new Array2DRowRealMatrix(charges, false);
        RealMatrix energy = c.transpose()
                .multiply(new Array2DRowRealMatrix(chargeInteraction(), false))
                .multiply(c);
        return energy.add(energy.transpose()).scalarMultiply(0.5); // symmetric to the last bit, as Cholesky asks
    }

    /** Rows: pole density on each band, then (ρ/a)^2k coefficients on the top and on the bottom; columns: trials. */
    private double[][] chargesOfTrials() {
        double[][] c = new double[RodMesh.ELEMENTS + 2 * RodMesh.RADIAL][RodMesh.UNKNOWNS];
        for (int k = 0; k < RodMesh.RADIAL; k++) {
            for (int e = 0; e < RodMesh.ELEMENTS; e++) {
                double density = a / (2 * k + 2) / mesh.width(e);
                c[e][k * RodMesh.NODES + e] = density;
                c[e][k * RodMesh.NODES + e + 1] = -density;
            }
            c[RodMesh.ELEMENTS + k][k * RodMesh.NODES + RodMesh.ELEMENTS] = 1;
            c[RodMesh.ELEMENTS + RodMesh.RADIAL + k][k * RodMesh.NODES] = -1;
        }
        return c;
    }

    private double[][] chargeInteraction() {
        double[][] g = new double[RodMesh.ELEMENTS + 2 * RodMesh.RADIAL][RodMesh.ELEMENTS + 2 * RodMesh.RADIAL];
        for (int i = 0; i < RodMesh.ELEMENTS; i++) {
            for (int j = 0; j <= i; j++) {
                int n = RodMesh.ELEMENTS - 1; // bands n − j and n − i mirror bands i and j
                g[i][j] = g[j][i] = i + j > n ? g[n - j][n - i] : bandWithBand(i, j);
            }
            for (int k = 0; k < RodMesh.RADIAL; k++) {
                g[i][RodMesh.ELEMENTS + k] = g[RodMesh.ELEMENTS + k][i] = bandWithDisc(i, half, k);
                g[i][RodMesh.ELEMENTS + RodMesh.RADIAL + k] =
                        g[RodMesh.ELEMENTS + RodMesh.RADIAL + k][i] = bandWithDisc(i, -half, k);
            }
        }
        for (int j = 0; j < RodMesh.RADIAL; j++) {
            for (int k = 0; k < RodMesh.RADIAL; k++) {
                int top = RodMesh.ELEMENTS + j, bottom = RodMesh.ELEMENTS + RodMesh.RADIAL + k;
                g[top][RodMesh.ELEMENTS + k] =
                        g[RodMesh.ELEMENTS + RodMesh.RADIAL + j][bottom] = DISC[j][k] * a * a * a;
                g[top][bottom] = g[bottom][top] = discWithDisc(j, k);
            }
        }
        return g;
    }

    private double bandWithBand(int i, int j) {
        double each = Bands.interaction(
                t -> ringPotential(a, a, t), mesh.node(i), mesh.node(i + 1), mesh.node(j), mesh.node(j + 1));
        return square(2 * Math.PI * a) * each;
    }

    /** Potential of a ring of radius r1 and unit charge at radius r2, z away, both about one axis: K/(2π²s). */
    static double ringPotential(double r1, double r2, double z) {
        double s2 = square(r1 + r2) + z * z;
        return CoaxialLoops.bigK((square(r1 - r2) + z * z) / s2) / (2 * Math.PI * Math.PI * Math.sqrt(s2));
    }

    private double bandWithDisc(int band, double end, int k) {
        double from = Math.abs(mesh.node(band) - end), to = Math.abs(mesh.node(band + 1) - end);
        double near = Math.min(from, to), far = Math.max(from, to), sum = 0;
        for (int i = 0; i < RodMesh.RULE.getNumberOfPoints(); i++) {
            double s = RodMesh.unit(i), w = RodMesh.RULE.getWeight(i) / 2;
            double t = near < 1e-9 * half ? far * s * s * s : near + (far - near) * s;
            double wt = near < 1e-9 * half ? w * 3 * s * s * far : w * (far - near);
            for (int j = 0; j < RodMesh.RULE.getNumberOfPoints(); j++) {
                sum += wt * mesh.discWeight(j, k) * ringPotential(mesh.discRadius(j), a, t);
            }
        }
        return 2 * Math.PI * a * sum;
    }

    private double discWithDisc(int j, int k) {
        double sum = 0;
        for (int p = 0; p < RodMesh.RULE.getNumberOfPoints(); p++) {
            for (int q = 0; q < RodMesh.RULE.getNumberOfPoints(); q++) {
                sum += mesh.discWeight(p, j)
                        * mesh.discWeight(q, k)
                        * ringPotential(mesh.discRadius(p), mesh.discRadius(q), 2 * half);
            }
        }
        return sum;
    }

    /** ∫M·M for each pair of trials. */
    RealMatrix mass() {
        double[][] mass = new double[RodMesh.UNKNOWNS][RodMesh.UNKNOWNS];
        for (int j = 0; j < RodMesh.RADIAL; j++) {
            for (int k = 0; k < RodMesh.RADIAL; k++) {
                double along = Math.PI * a * a / (j + k + 1);
                double across = 2 * Math.PI * square(a * a) / ((2 * j + 2) * (2 * k + 2) * (2 * j + 2 * k + 4));
                for (int e = 0; e < RodMesh.ELEMENTS; e++) {
                    double dz = mesh.width(e);
                    int p = j * RodMesh.NODES + e, q = k * RodMesh.NODES + e;
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
