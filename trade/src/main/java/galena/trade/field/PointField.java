package galena.trade.field;

import org.hipparchus.complex.Complex;

/**
 * Field of a straight or ring-shaped aerial at one point, in spherical components about its axis. One of the two fields
 * lies in the plane of axis and radius (radial and polar components), the other circles the axis.
 *
 * @param eRadial E along the radius (V/m)
 * @param ePolar E along the polar angle
 * @param eAzimuth E around the axis
 * @param hRadial H along the radius (A/m)
 * @param hPolar H along the polar angle
 * @param hAzimuth H around the axis
 */
public record PointField(
        Complex eRadial, Complex ePolar, Complex eAzimuth, Complex hRadial, Complex hPolar, Complex hAzimuth) {
    /** What an electric probe reads turned to its greatest reading (V/m). */
    public double greatestE() {
        return majorAxis(eRadial, ePolar, eAzimuth);
    }

    /** What a small loop reads turned to its greatest reading (A/m). */
    public double greatestH() {
        return majorAxis(hRadial, hPolar, hAzimuth);
    }

    /** Root of the summed squares of all components of E (V/m); above {@link #greatestE} where the field turns. */
    public double totalE() {
        return Math.sqrt(squares(eRadial, ePolar, eAzimuth));
    }

    /** Root of the summed squares of all components of H (A/m). */
    public double totalH() {
        return Math.sqrt(squares(hRadial, hPolar, hAzimuth));
    }

    /** E a loop calibrated in far-field terms shows: greatest H times 377 Ω (V/m). Equals E in the far field only. */
    public double loopEquivalent() {
        return greatestH() * FreeSpace.IMPEDANCE;
    }

    private static double squares(Complex... components) {
        double sum = 0;
        for (Complex each : components) sum += each.norm() * each.norm();
        return sum;
    }

    /** Long half-axis of the ellipse that a complex vector v describes: √((|v|² + |v·v|)/2). */
    private static double majorAxis(Complex... components) {
        Complex product = Complex.ZERO;
        for (Complex each : components) product = product.add(each.multiply(each));
        return Math.sqrt((squares(components) + product.norm()) / 2);
    }
}
