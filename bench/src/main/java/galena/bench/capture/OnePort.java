package galena.bench.capture;

import java.util.List;

/**
 * A one-port sweep as reflection.
 *
 * @param hertz frequencies, rising
 * @param real part of the reflection coefficient
 * @param imaginary part of the reflection coefficient
 * @param reference resistance (Ω)
 */
public record OnePort(List<Double> hertz, List<Double> real, List<Double> imaginary, double reference)
        implements Content {
    public OnePort {
        hertz = List.copyOf(hertz);
        real = List.copyOf(real);
        imaginary = List.copyOf(imaginary);
    }
}
