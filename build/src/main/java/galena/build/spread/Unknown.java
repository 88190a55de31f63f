package galena.build.spread;

import galena.engine.part.Part;

/**
 * Something of a build that is drawn: one value, or one device with two numbers to it.
 *
 * @param what "Lt inductance ±5 %"
 * @param numbers of the unit cube that it takes
 * @param draw gives the part from those numbers and from the part as drawn so far
 */
record Unknown(String what, String part, int numbers, Draw draw) {
    /** Makes a part from numbers in [0, 1). */
    interface Draw {
        Part from(Part sofar, double[] u, int at);
    }

    /** −limit to +limit, evenly. */
    static double even(double u, double limit) {
        return 1 + limit * (2 * u - 1);
    }
}
