package galena.trade.ferrite;

import galena.trade.coil.CoaxialLoops;
import galena.trade.wire.SkinEffect;
import org.hipparchus.special.elliptic.carlson.CarlsonEllipticIntegral;

/**
 * How hard a cylindrical current sheet round a rod drives each trial magnetisation, ∫M·H dV for one ampere. As M is a
 * curl, M = ∇×(φ̂·T), and H has none inside the rod, the integral goes over to the surface: ∮(T×H)·dS, T =
 * ρ^(2k+1)/((2k+2)a^2k)·m_k. So only H_z on the mantle and H_ρ on the end faces are asked for, both in closed form.
 */
final class RodDrive {
    private final RodMesh rod;
    private final double radius;
    private final double start;
    private final double end;
    private final double turnsPerMetre;

    /**
     * @param rod the rod
     * @param radius of the sheet, greater than the rod's (m)
     * @param start of the sheet along the axis, from the rod's middle (m)
     * @param end of it (m)
     * @param turns on it
     */
    RodDrive(RodMesh rod, double radius, double start, double end, double turns) {
        this.rod = rod;
        this.radius = radius;
        this.start = start;
        this.end = end;
        this.turnsPerMetre = turns / (end - start);
    }

    double[] drive() {
        double[] drive = new double[RodMesh.UNKNOWNS];
        for (int e = 0; e < RodMesh.ELEMENTS; e++) addBand(drive, e);
        addEndFace(drive, rod.halfLength(), RodMesh.NODES - 1, -1);
        addEndFace(drive, -rod.halfLength(), 0, 1);
        return drive;
    }

    /** The field steps at the sheet's ends, over the gap between rod and wire: a band holding one is cut there. */
    private void addBand(double[] drive, int e) {
        double from = rod.node(e), to = rod.node(e + 1);
        double cut1 = clamp(start, from, to), cut2 = clamp(end, from, to);
        addStretch(drive, e, from, cut1);
        double middle = (cut1 + cut2) / 2;
        addStretch(drive, e, cut1, middle);
        addStretch(drive, e, middle, cut2);
        addStretch(drive, e, cut2, to);
    }

    private static double clamp(double z, double from, double to) {
        return Math.max(from, Math.min(to, z));
    }

    /** Points are crowded to both ends of a stretch by 3s² − 2s³ applied twice, since either may be a step. */
    private void addStretch(double[] drive, int e, double from, double to) {
        double length = to - from;
        if (length < 1e-12 * rod.halfLength()) return;
        double left = rod.node(e), dz = rod.node(e + 1) - left, a = rod.radius();
        for (int i = 0; i < RodMesh.RULE.getNumberOfPoints(); i++) {
            double s = (RodMesh.RULE.getPoint(i) + 1) / 2, u = smooth(s);
            double weight = RodMesh.RULE.getWeight(i) / 2 * length * slope(s) * slope(u);
            double z = from + length * smooth(u);
            double pull = 2 * Math.PI * a * weight * axialField(z);
            for (int k = 0; k < RodMesh.RADIAL; k++) {
                double each = pull * a / (2 * k + 2);
                drive[k * RodMesh.NODES + e] += each * (1 - (z - left) / dz);
                drive[k * RodMesh.NODES + e + 1] += each * (z - left) / dz;
            }
        }
    }

    private static double smooth(double s) {
        return s * s * (3 - 2 * s);
    }

    private static double slope(double s) {
        return 6 * s * (1 - s);
    }

    private void addEndFace(double[] drive, double z, int node, int sign) {
        for (int i = 0; i < RodMesh.RULE.getNumberOfPoints(); i++) {
            double r = rod.discRadius(i);
            double outward = turnsPerMetre * (potential(r, z - end) - potential(r, z - start));
            for (int k = 0; k < RodMesh.RADIAL; k++) {
                drive[k * RodMesh.NODES + node] += sign * rod.discWeight(i, k) * r / (2 * k + 2) * outward;
            }
        }
    }

    /** Vector potential of one ampere in a circle of the sheet's radius, over µ₀. */
    private double potential(double r, double z) {
        return CoaxialLoops.mutual(radius, r, z) / (2 * Math.PI * r * SkinEffect.MU_0);
    }

    /**
     * H_z of the sheet at the rod's surface. An end acts as a disc of poles; with its solid angle in Legendre's
     * integrals (F. Paxton, Rev. Sci. Instrum. 30 (1959) p. 254), H_z = (n/2π)·[f(z − start) − f(z − end)], f(t) =
     * (t/s)·(K + γΠ), γ = (R − a)/(R + a).
     */
    private double axialField(double z) {
        return turnsPerMetre / (2 * Math.PI) * (endTerm(z - start) - endTerm(z - end));
    }

    private double endTerm(double t) {
        double a = rod.radius(), sum = radius + a, gamma = (radius - a) / sum;
        double s2 = sum * sum + t * t, m1 = ((radius - a) * (radius - a) + t * t) / s2;
        double n = 1 - gamma * gamma;
        double bigK = CoaxialLoops.bigK(m1);
        double bigPi = bigK + n / 3 * CarlsonEllipticIntegral.rJ(0, m1, 1, gamma * gamma);
        return t / Math.sqrt(s2) * (bigK + gamma * bigPi);
    }
}
