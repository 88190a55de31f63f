package galena.build.drift;

import galena.build.figure.Figure;
import java.util.List;
import java.util.Optional;

/**
 * How a build wanders after it is switched on.
 *
 * @param carrier at switch-on, Hz
 * @param output the coil whose current is the output
 * @param channel how far the carrier may wander before it counts as off its channel, Hz either way
 * @param wanted depth, a fraction; empty when the intent names none or nothing modulates
 * @param audio peak voltage of the source, set at switch-on for that depth and left, V
 * @param run by time from switch-on; the last point is where the battery is spent or the oscillation's last
 * @param temperatures by rising temperature, everything else as at switch-on
 * @param pushing what one volt more of supply does, Hz
 * @param leaves hours until the carrier has wandered off its channel
 * @param loses hours until less than nine tenths of the wanted depth are left, or it distorts
 * @param stops hours until it stops oscillating
 * @param spent hours until the terminals fall to the battery's end voltage
 */
public record DriftReport(
        double carrier,
        String output,
        double channel,
        Optional<Double> wanted,
        double audio,
        List<Moment> run,
        List<Moment> temperatures,
        double pushing,
        Figure leaves,
        Figure loses,
        Figure stops,
        Figure spent) {
    public DriftReport {
        run = List.copyOf(run);
        temperatures = List.copyOf(temperatures);
    }

    /**
     * The build at one moment.
     *
     * @param seconds since switch-on
     * @param charge of the battery, 0 to 1; 1 without one
     * @param celsius °C
     * @param terminals supply at the terminals, V
     * @param frequency Hz
     * @param output peak carrier current in the output coil, A
     * @param supply A
     * @param depth static negative peak with the audio as it was left, a fraction; empty where the oscillation is lost in the
     *     trough
     * @param distortion of that envelope, a fraction; empty with it
     */
    public record Moment(
            double seconds,
            double charge,
            double celsius,
            double terminals,
            double frequency,
            double output,
            double supply,
            Optional<Double> depth,
            Optional<Double> distortion) {}
}
