package galena.trade.ferrite;

import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * Where a rod's magnetisation is described: bands along the mantle, narrower towards the ends, and rings on the end
 * faces. From 80 to 320 bands the inductance of a short winding moves by under 0.05 %, its copper loss by under 2 %.
 */
final class RodMesh {
    static final int ELEMENTS = 80;
    static final int NODES = ELEMENTS + 1;

    /** Terms across the rod, see {@link RodProblem}. */
    static final int RADIAL = 2;

    static final int UNKNOWNS = RADIAL * NODES;
    static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(12);

    private final double a;
    private final double half;
    private final double[] nodes = new double[NODES];

    RodMesh(double length, double radius) {
        this.a = radius;
        this.half = length / 2;
        for (int i = 0; i < NODES; i++) nodes[i] = half * Math.sin(Math.PI / 2 * (2.0 * i / ELEMENTS - 1));
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

    double width(int band) {
        return nodes[band + 1] - nodes[band];
    }

    /** Radii on an end face, crowded towards the rim. */
    double discRadius(int point) {
        return a * (1 - (1 - unit(point)) * (1 - unit(point)));
    }

    /** Charge of the ring about {@link #discRadius} for pole density (ρ/a)^2k. */
    double discWeight(int point, int k) {
        double r = discRadius(point), dr = a * (1 - unit(point)) * RULE.getWeight(point);
        return 2 * Math.PI * r * dr * Math.pow(r / a, 2 * k);
    }

    /** Gauss point of the unit stretch. */
    static double unit(int point) {
        return (RULE.getPoint(point) + 1) / 2;
    }
}
