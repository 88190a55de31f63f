package galena.build.substitute;

import galena.build.quantity.Unit;
import java.util.List;

/**
 * How the devices of one kind differ, by a few numbers, each with a test that tells it: what a voltmeter shows in a circuit of one or two
 * resistors. Numbers and readings are above zero.
 */
interface Law {
    /** The supply of every test, V: a 9 V block, or six fresh cells. */
    double SUPPLY = 9;

    /**
     * One number.
     *
     * @param words what it is
     * @param unit as people state it
     * @param typical in the device that stands there
     * @param least as far down as is asked
     * @param most as far up
     * @param sign −1 where people state it below zero
     */
    record Parameter(String words, Unit unit, double typical, double least, double most, int sign) {}

    List<Parameter> parameters();

    /** The device with those numbers as it stands in a build. */
    String text(double[] numbers);

    /** Volts shown in the test of one number, all numbers given; above zero. */
    double reading(int test, double[] numbers);

    /** How each is connected and read, in order. */
    List<String> steps();

    /** What is read in each, in words. */
    List<String> shown();

    /** From this reading on more of the number shows no more, V: the window is open there. */
    default double saturates() {
        return Double.POSITIVE_INFINITY;
    }

    /** What the specimens leave out, in words; empty where nothing. */
    default String leavesOut() {
        return "";
    }
}
