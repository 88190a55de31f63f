package galena.build.modulation;

import galena.build.figure.Figure;
import java.util.List;

/**
 * How depth and swing of a small tone go with its frequency.
 *
 * @param quantity whose envelope it is
 * @param reference audio frequency against which the response is counted, Hz
 * @param points from low to high
 * @param low the −3 dB point below the reference, Hz
 * @param high the one above
 */
public record AudioResponse(String quantity, double reference, List<Point> points, Figure low, Figure high) {
    public AudioResponse {
        points = List.copyOf(points);
    }

    /**
     * One frequency.
     *
     * @param audio Hz
     * @param decibels depth against that at the reference
     * @param depth per volt of the source, a fraction
     * @param swing per volt, peak, Hz
     */
    public record Point(double audio, double decibels, double depth, double swing) {}
}
