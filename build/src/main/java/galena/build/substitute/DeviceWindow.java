package galena.build.substitute;

import galena.build.figure.Figure;
import java.util.List;

/**
 * The devices that work in a place, as ranges of their parameters, and as readings of a test.
 *
 * @param axes one parameter at a time, the others as in the typical device
 * @param test how a part on the bench is read
 */
public record DeviceWindow(List<Axis> axes, Test test) {
    public DeviceWindow {
        axes = List.copyOf(axes);
    }

    /**
     * One parameter.
     *
     * @param parameter in words
     * @param typical in the device that stands there
     * @param low least that works, or why no least was found
     * @param high most that works, or why no most was found
     */
    public record Axis(String parameter, Figure typical, Figure low, Figure high) {}

    /**
     * A test with resistors and a voltmeter.
     *
     * @param steps how to connect and what to read
     * @param readings each with its window: a part that reads inside all of them works. The value is the typical device's
     * @param proof how far the readings' own corners were proven, in words
     */
    public record Test(List<String> steps, List<Figure.Known> readings, String proof) {
        public Test {
            steps = List.copyOf(steps);
            readings = List.copyOf(readings);
        }
    }
}
