package galena.trade.ferrite;

import galena.trade.coil.CoaxialLoops;

/**
 * Field of a rod's poles outside it, summed from rings of charge: it is what crosses the turns near a winding's ends
 * and makes rod coils lossier than the same coil in air. The poles are those of the smoothed winding, so the ripple
 * from turn to turn is left out; it dies off within one pitch from the rod.
 */
final class RodStrayField {
    private final RodProblem problem;
    private final RodMesh rod;
    private final double[] magnetisation;

    RodStrayField(RodProblem problem, double[] magnetisation) {
        this.problem = problem;
        this.rod = problem.mesh();
        this.magnetisation = magnetisation;
    }

    /**
     * @param r distance from the axis, greater than the rod's radius (m)
     * @param z from the rod's middle (m)
     * @param into written: [0] along the axis, [1] outwards (A/m)
     */
    void at(double r, double z, double[] into) {
        into[0] = 0;
        into[1] = 0;
        for (int e = 0; e < RodMesh.ELEMENTS; e++) {
            double from = rod.node(e), to = rod.node(e + 1), density = problem.bandDensity(magnetisation, e);
            double cut = Math.max(from, Math.min(to, z));
            addBand(density, from, cut, r, z, into);
            addBand(density, to, cut, r, z, into);
        }
        addFace(rod.halfLength(), RodMesh.NODES - 1, 1, r, z, into);
        addFace(-rod.halfLength(), 0, -1, r, z, into);
    }

    /** From the far end to the end nearest the point, rings crowded to the latter by t = s³. */
    private void addBand(double density, double far, double near, double r, double z, double[] into) {
        double length = Math.abs(far - near);
        if (length == 0) return;
        for (int i = 0; i < RodMesh.RULE.getNumberOfPoints(); i++) {
            double s = (RodMesh.RULE.getPoint(i) + 1) / 2, weight = RodMesh.RULE.getWeight(i) / 2;
            double charge = density * 2 * Math.PI * rod.radius() * length * 3 * s * s * weight;
            addRing(charge, rod.radius(), near + (far - near) * s * s * s, r, z, into);
        }
    }

    private void addFace(double height, int node, int sign, double r, double z, double[] into) {
        for (int i = 0; i < RodMesh.RULE.getNumberOfPoints(); i++) {
            double charge = 0;
            for (int k = 0; k < RodMesh.RADIAL; k++) {
                charge += sign * rod.discWeight(i, k) * magnetisation[k * RodMesh.NODES + node];
            }
            addRing(charge, rod.discRadius(i), height, r, z, into);
        }
    }

    /** Minus the gradient of {@link RodMatrices#ringPotential}. */
    private static void addRing(double charge, double a, double height, double r, double z, double[] into) {
        double dz = z - height, s2 = (a + r) * (a + r) + dz * dz, near2 = (a - r) * (a - r) + dz * dz;
        double s = Math.sqrt(s2), m1 = near2 / s2;
        double k = CoaxialLoops.bigK(m1), e = CoaxialLoops.bigE(m1);
        double scale = charge / (2 * Math.PI * Math.PI * s);
        into[0] += scale * dz / near2 * e;
        into[1] += scale / (2 * r) * (k - (a * a - r * r + dz * dz) / near2 * e);
    }
}
